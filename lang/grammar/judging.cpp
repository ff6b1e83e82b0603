#include <algorithm>

#include "lang/grammar/characters.hpp"
#include "lang/grammar/fault.hpp"
#include "lang/grammar/rules.hpp"

// What a design is judged by: bodies, practice, accepted findings.
namespace leat::grammar {

namespace {

using syntax::AcceptDeclaration;
using syntax::BodyDeclaration;
using syntax::BodyProperty;
using syntax::PlaceReference;
using syntax::PracticeDeclaration;
using syntax::PracticeSetting;

constexpr Form body_form{"body", "body NAME { footprint 1  height 2  floats }"};
constexpr Form practice_form{"practice block", "practice { longest_drop 3 }"};
constexpr Form setting_form{"rule of practice", "longest_drop 3"};
constexpr Form property_form{"property of a body", "footprint 1"};
constexpr Form accept_form{"acceptance",
                           "accept FINDING at JUNCTION 3 4 0 when EXPRESSION because \"reason\""};

Entries const property_entries{
    "property of a body", "'footprint', 'height', 'floats', 'sinks'", {}, {}, false, ""};
Entries const setting_entries{"rule of practice", "a rule of practice", {}, {}, false, ""};

struct property_tag;
constexpr x3::rule<property_tag, BodyProperty> property{"a property of the body"};
struct setting_tag;
constexpr x3::rule<setting_tag, PracticeSetting> setting{"a rule of practice"};

// Where a number of a place stands, which none below 0 does: a minus is what is wrong then.
struct FromZero : x3::parser<FromZero> {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static bool const has_attribute = false;
  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator& first, Iterator const& last, AnyContext const& context, RuleContext&,
             Attribute&) const {
    if (first == last || *first != '-') return true;
    Reading& reading = x3::get<reading_tag>(context);
    auto const* end = std::find_if_not(first + 1, last, is_digit);
    fail_ready(first, reading,
               fault("place-outside", "A place in a drawing has no number below 0",
                     reading.span(first, end), "column, row and level are counted from 0",
                     "Count from the north-west corner of the lowest level; of a works, of all "
                     "that it places."));
  }
};

// clang-format off
auto const property_def = spanned[
     Name("a property of the body", true)[put<&BodyProperty::name>] >> enter(property_form)
  >> -(WholeNumber("a number")[put<&BodyProperty::value>] >> -(keyword("ticks") | keyword("tick")))
];

auto const body_def = spanned[
    opens("body", body_form)
  > Name("a name")[put<&BodyDeclaration::name>]
  > block[entries_of<BodyProperty>(property, property_entries)[put<&BodyDeclaration::properties>]]
];

auto const setting_def = spanned[
     Name("a rule of practice", true)[put<&PracticeSetting::name>] >> enter(setting_form)
  >  WholeNumber("a number")[put<&PracticeSetting::value>]
];

auto const practice_def = spanned[
    opens("practice", practice_form)
  > block[entries_of<PracticeSetting>(setting, setting_entries)[put<&PracticeDeclaration::settings>]]
];

auto const place_def = spanned[
     -Name("a junction's name")[put<&PlaceReference::junction>]
  >> FromZero() >> WholeNumber("a place such as 3 4 0")[put<&PlaceReference::x>]
   > FromZero() > WholeNumber("the place's second number (cells south)")[put<&PlaceReference::y>]
   > FromZero() > WholeNumber("the place's third number (the level)")[put<&PlaceReference::z>]
];

auto const accept_def = spanned[
    opens("accept", accept_form)
  > FindingName("a finding's name")[put<&AcceptDeclaration::finding>]
  > -(keyword("at") > called("a place such as 3 4 0", place)[put<&AcceptDeclaration::place>])
  > -(keyword("when") > expression_here(condition_name)[put<&AcceptDeclaration::condition>])
  > keyword("because")
  > QuotedText("a reason in quotes")[put<&AcceptDeclaration::reason>]
];
// clang-format on

BOOST_SPIRIT_DEFINE(property, setting)

}  // namespace

BOOST_SPIRIT_DEFINE(body, practice, accept, place)

struct body_tag {};
struct practice_tag {};
struct accept_tag {};
struct place_tag {};

BOOST_SPIRIT_INSTANTIATE(BodyRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(PracticeRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(AcceptRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(PlaceRule, Iterator, Context)

}  // namespace leat::grammar
