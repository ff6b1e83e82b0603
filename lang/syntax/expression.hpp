#pragma once
#include <string>
#include <vector>

#include "lang/source/source_text.hpp"

namespace leat::syntax {

using source::Span;

// A whole number as written. Digits that do not fit are clamped and marked, so that the checks can say so.
struct Number {
  long value = 0;
  bool is_too_large = false;
  Span span;
};

//  3 | lane | -EXPRESSION | 2 * lane + 1 | lane / 2 | lane mod 4 | 2 ^ stage
enum class NumberKind { literal, name, negation, sum, difference, product, quotient, remainder, power };

// Recursive through the vector; all but literal, name and negation have two operands.
struct NumberExpression {
  NumberKind kind = NumberKind::literal;
  Number literal;
  std::string name;
  std::vector<NumberExpression> operands;
  Span span;
};

// A number in brackets within a name, `turn[lane + 1]`, and after how many bytes of the name it stands.
struct Index {
  std::size_t at = 0;
  NumberExpression value;
};

// A word of the language, or a name. A name of something placed has parts joined by dots, `first.kiln`, and parts of
// repeated things have numbers in brackets: `fork[lane][lane + 1].mill` is the text "fork.mill" with two indices at 4.
// A number that is a literal stands in the text: `fork[2].mill` is that text, with no indices.
struct Word {
  std::string text;
  Span span;
  std::vector<Index> indices{};
};

// A quoted text, without its quotes.
struct Text {
  std::string text;
  Span span;
};

enum class ExpressionKind { constant, name, negation, conjunction, disjunction, parity };

// Recursive through the vector. A chain `a and b and c` is one node with three operands, so that long chains stay flat.
struct Expression {
  ExpressionKind kind = ExpressionKind::constant;
  bool value = false;  // constant
  std::string name;    // name, with indices as a Word has them
  std::vector<Index> indices{};
  std::vector<Expression> operands;
  Span span;
};

struct Duration {
  Number amount;
  Word unit;  // "ticks" (or "tick") or "s"
  Span span;
};

}  // namespace leat::syntax
