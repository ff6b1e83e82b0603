#include <optional>

#include "lang/grammar/fault.hpp"
#include "lang/grammar/rules.hpp"

// What is drawn: materials { ... }, marks { ... }, and junctions with their levels.
namespace leat::grammar {

namespace {

using syntax::JunctionDeclaration;
using syntax::LevelDeclaration;
using syntax::MarkDeclaration;
using syntax::MarkRole;
using syntax::MaterialChoice;
using syntax::MaterialDeclaration;
using syntax::Word;

// ---- materials ----

constexpr Form materials_form{"materials block", "materials { ... }"};
constexpr Form material_form{
    "material",
    "NAME TRAIT, TRAIT, with the traits 'carries', 'passes water', 'passes bodies', "
    "'bears sources', 'shows slope' and 'is source'"};
Entries const material_entries{"material", "a material's name", {}, {}, true, ""};

constexpr char const* passed[] = {"water", "bodies"};
constexpr char const* borne[] = {"sources"};
constexpr char const* shown[] = {"slope"};
constexpr char const* been[] = {"source"};

// The second word of a trait joins the first.
struct JoinWord {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    auto& trait = x3::_val(context);
    auto const& word = x3::_attr(context);
    if (!trait.text.empty()) trait.text += ' ';
    trait.text += word.text;
  }
};
constexpr JoinWord join_word{};

struct trait_tag;
constexpr x3::rule<trait_tag, Word> trait{"a trait"};
struct material_tag;
constexpr x3::rule<material_tag, MaterialDeclaration> material{"a material"};

// clang-format off
auto const trait_def = spanned[
    (keyword("passes")[join_word] > OneOf("'water' or 'bodies'", passed)[join_word])
  | (keyword("bears")[join_word] > OneOf("'sources'", borne)[join_word])
  | (keyword("shows")[join_word] > OneOf("'slope'", shown)[join_word])
  | (keyword("is")[join_word] > OneOf("'source'", been)[join_word])
  | keyword("carries")[join_word]
];

constexpr char trait_name[] = "a trait";
auto const first_trait = called(trait_name, trait)[append<&MaterialDeclaration::traits>];
auto const next_trait = called(trait_name, trait, true)[append<&MaterialDeclaration::traits>];

auto const material_def = spanned[
     Name("a material", true)[put<&MaterialDeclaration::name>] >> enter(material_form)
  >> x3::expect[first_trait] >> *(sign(",") > next_trait)
];

auto const materials_def = spanned[
    opens("materials", materials_form)
  > block[entries_of<MaterialDeclaration>(material, material_entries)[put<&syntax::MaterialsDeclaration::materials>]]
];
// clang-format on

BOOST_SPIRIT_DEFINE(trait, material)

// ---- marks ----

constexpr Form marks_form{"marks block", "marks { ... }"};
constexpr Form mark_form{"mark",
                         "X MATERIAL, X MATERIAL when EXPRESSION else MATERIAL, "
                         "or X with 'inlet NAME', 'outlet NAME' or 'plate NAME'"};
Entries const mark_entries{"mark", "a mark", {}, {}, true, ""};

struct material_name_tag;
constexpr x3::rule<material_name_tag, Word> material_name{"a material"};
struct choice_tag;
constexpr x3::rule<choice_tag, MaterialChoice> choice{"a material"};
struct mark_tag;
constexpr x3::rule<mark_tag, MarkDeclaration> mark{"a mark"};

template <MarkRole Role>
constexpr auto role(char const* word) {
  return keyword(word)[set<&MarkDeclaration::role, Role>];
}

// clang-format off
// `plate` is a material and a word of the language.
auto const material_name_def = Name("a material")[become] | keyword("plate")[become];

auto const choice_def = spanned[
    material_name[put<&MaterialChoice::material>]
 >> -(  keyword("when") > expression_here(condition_name)[put<&MaterialChoice::control>]
      > keyword("else") > called("a material", material_name)[put<&MaterialChoice::otherwise>])
];

auto const taken = choice[put<&MarkDeclaration::choice>];

auto const port_name = Name("a name")[put<&MarkDeclaration::role_name>];
auto const plate_name = indexed_name("a name")[put<&MarkDeclaration::role_name>];

auto const mark_def = spanned[
     Glyph("a mark", true)[put<&MarkDeclaration::glyph>] >> enter(mark_form)
  >> x3::expect[called("a material, 'inlet', 'outlet' or 'plate'",
         (  (((role<MarkRole::inlet>("inlet") | role<MarkRole::outlet>("outlet")) > port_name)
             | (role<MarkRole::plate>("plate") > plate_name))
         >> -(keyword("in") > called("a material", taken)))
       | taken)]
];

auto const marks_def = spanned[
    opens("marks", marks_form)
  > block[entries_of<MarkDeclaration>(mark, mark_entries)[put<&syntax::MarksDeclaration::marks>]]
];
// clang-format on

BOOST_SPIRIT_DEFINE(material_name, choice, mark)

// ---- junctions ----

constexpr Form junction_form{"junction", "junction NAME \"title\" { level 0 { |....| } }"};
constexpr Form level_form{"level",
                          "level 0 { |....| }, or level 2..6 { |....| } to draw it on each"};

Entries const junction_entries{
    "level", "'level', 'outside', 'number'", {"level", "outside", "number"}, {}, false, ""};
Entries const row_entries{"row", "a row such as |....|",
                          {},    {"level", "outside"},
                          false, "Draw each row between two bars on one line: |....|"};

// What stands in a junction: a level, a number, or what is outside the drawing.
struct Part {
  std::optional<syntax::NumberDeclaration> number;
  std::optional<Word> outside;
  std::optional<LevelDeclaration> level;
};

// Gathers the parts. `outside` may be said once.
struct Assemble {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    Reading& reading = x3::get<reading_tag>(context);
    JunctionDeclaration& node = x3::_val(context);
    for (Part& part : x3::_attr(context)) {
      if (part.number) node.numbers.push_back(std::move(*part.number));
      if (part.level) node.levels.push_back(std::move(*part.level));
      if (!part.outside) continue;
      if (node.outside)
        reading.report(outside_twice("A junction", node.outside->span, part.outside->span));
      node.outside = std::move(part.outside);
    }
  }
};

struct level_tag;
constexpr x3::rule<level_tag, LevelDeclaration> level{"a level"};
struct part_tag;
constexpr x3::rule<part_tag, Part> part{"a level"};

// clang-format off
auto const level_head = spanned[
    opens("level", level_form)
  > called("a level's number", bare_number)[put<&LevelDeclaration::lowest>]
  > -(sign_here("..") > called("the highest level's number", bare_number)[put<&LevelDeclaration::highest>])
];

auto const level_def =
    level_head
  > block[entries_of<syntax::Row>(DrawnRow("a row such as |....|", true), row_entries)[put<&LevelDeclaration::rows>]];

auto const part_def =
    outside[put<&Part::outside>]
  | number_declaration[put<&Part::number>]
  | level[put<&Part::level>];

auto const junction_def = spanned[
    opens("junction", junction_form)
  > Name("a name")[put<&JunctionDeclaration::name>]
  > -QuotedText("a title", true)[put<&JunctionDeclaration::title>]
  > block[entries_of<Part>(part, junction_entries)[Assemble{}]]
];
// clang-format on

BOOST_SPIRIT_DEFINE(level, part)

}  // namespace

BOOST_SPIRIT_DEFINE(materials, marks, junction)

struct materials_tag {};
struct marks_tag {};
struct junction_tag {};

BOOST_SPIRIT_INSTANTIATE(MaterialsRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(MarksRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(JunctionRule, Iterator, Context)

}  // namespace leat::grammar
