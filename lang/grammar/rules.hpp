#pragma once
#include "lang/grammar/context.hpp"

// The rules that one unit defines and others use. A rule's text is what a reader sees after
// "expected".
namespace leat::grammar {

template <class Tag, class Node>
using Rule = x3::rule<Tag, Node>;

// numbers.cpp
using NumberRule = Rule<struct number_tag, syntax::NumberExpression>;
using BareNumberRule = Rule<struct bare_number_tag, syntax::NumberExpression>;
using CoordinateRule = Rule<struct coordinate_tag, syntax::NumberExpression>;
using NumberDeclarationRule = Rule<struct number_declaration_tag, syntax::NumberDeclaration>;
using LoopHeadRule = Rule<struct loop_head_tag, syntax::Loop>;
inline constexpr NumberRule number{"a number"};
inline constexpr BareNumberRule bare_number{"a number"};
inline constexpr CoordinateRule coordinate{"a number"};
inline constexpr NumberDeclarationRule number_declaration{"a number"};
inline constexpr LoopHeadRule loop_head{"a repetition"};

// names.cpp
using IndexedRule = Rule<struct indexed_tag, syntax::Word>;
using PathRule = Rule<struct path_tag, syntax::Word>;
inline constexpr IndexedRule indexed{"a name"};
inline constexpr PathRule path{"a name"};

// expression.cpp
using ExpressionRule = Rule<struct expression_tag, syntax::Expression>;
using DurationRule = Rule<struct duration_tag, syntax::Duration>;
inline constexpr ExpressionRule expression{"an expression"};
inline constexpr DurationRule duration{"a duration"};

// signals.cpp
using SignalsRule = Rule<struct signals_tag, syntax::SignalsDeclaration>;
inline constexpr SignalsRule signals{"signals"};

// drawing.cpp
using MaterialsRule = Rule<struct materials_tag, syntax::MaterialsDeclaration>;
using MarksRule = Rule<struct marks_tag, syntax::MarksDeclaration>;
using JunctionRule = Rule<struct junction_tag, syntax::JunctionDeclaration>;
inline constexpr MaterialsRule materials{"materials"};
inline constexpr MarksRule marks{"marks"};
inline constexpr JunctionRule junction{"a junction"};

// works.cpp
using OutsideRule = Rule<struct outside_tag, syntax::Word>;
using IncludeRule = Rule<struct include_tag, syntax::IncludeDeclaration>;
using WorksRule = Rule<struct works_tag, syntax::WorksDeclaration>;
inline constexpr OutsideRule outside{"what is outside"};
inline constexpr IncludeRule include{"an included file"};
inline constexpr WorksRule works{"works"};

// judging.cpp
using BodyRule = Rule<struct body_tag, syntax::BodyDeclaration>;
using PracticeRule = Rule<struct practice_tag, syntax::PracticeDeclaration>;
using AcceptRule = Rule<struct accept_tag, syntax::AcceptDeclaration>;
using PlaceRule = Rule<struct place_tag, syntax::PlaceReference>;
inline constexpr BodyRule body{"a body"};
inline constexpr PracticeRule practice{"practice"};
inline constexpr AcceptRule accept{"an acceptance"};
inline constexpr PlaceRule place{"a place such as 3 4 0"};

// clauses.cpp
using ClauseRule = Rule<struct clause_tag, syntax::Clause>;
inline constexpr ClauseRule clause{"a clause"};

// expecting.cpp
using ExpectRule = Rule<struct expect_tag, syntax::ExpectDeclaration>;
using TableRule = Rule<struct table_tag, syntax::TableDeclaration>;
inline constexpr ExpectRule expect{"an expectation"};
inline constexpr TableRule table{"a table"};

BOOST_SPIRIT_DECLARE(NumberRule, BareNumberRule, CoordinateRule)
BOOST_SPIRIT_DECLARE(NumberDeclarationRule, LoopHeadRule, IndexedRule, PathRule)
BOOST_SPIRIT_DECLARE(ExpressionRule, DurationRule, SignalsRule)
BOOST_SPIRIT_DECLARE(MaterialsRule, MarksRule, JunctionRule, OutsideRule, IncludeRule, WorksRule)
BOOST_SPIRIT_DECLARE(BodyRule, PracticeRule, AcceptRule, PlaceRule)
BOOST_SPIRIT_DECLARE(ClauseRule, ExpectRule, TableRule)

// An expression that begins on the line of the word before it.
constexpr auto expression_here(char const* name) { return called(name, expression); }
inline constexpr char condition_name[] = "a condition such as 'divert and not flush'";

// A number that does.
constexpr auto number_here(char const* name) { return called(name, number); }

// A name with numbers in brackets: what is declared by it.
constexpr auto indexed_name(char const* name) { return called(name, indexed); }
// One that may have parts joined by dots too: what is used by it.
constexpr auto path_name(char const* name, bool may_wrap = false) {
  return called(name, path, may_wrap);
}

}  // namespace leat::grammar
