#include <optional>

#include "lang/grammar/repeated.hpp"

// Several drawings made into one plant: works { ... }, and files that are included.
namespace leat::grammar {

namespace {

using syntax::JoinDeclaration;
using syntax::NumberSetting;
using syntax::PlaceDeclaration;
using syntax::PortDeclaration;
using syntax::SignalSetting;
using syntax::Word;
using syntax::WorksDeclaration;
using syntax::WorksItem;

constexpr Form include_form{"inclusion", "include \"file.leat\""};
constexpr Form works_form{"works", "works NAME \"title\" { place JUNCTION as NAME at 0 0 0 }"};
constexpr Form outside_form{"line of the surroundings", "outside open, or outside rock"};
constexpr Form place_form{"place",
                          "place JUNCTION as NAME at 0 0 0, then as needed 'turned left', "
                          "'mirrored', 'where NUMBER = 3', 'with SIGNAL = EXPRESSION'"};
constexpr Form join_form{"join", "join PLACE.OUTLET -> PLACE.INLET, or ... taking 9 s"};
constexpr Form inlet_form{"inlet", "inlet NAME = PLACE.INLET"};
constexpr Form outlet_form{"outlet", "outlet NAME = PLACE.OUTLET"};

constexpr char in_works[] =
    "A works places junctions, which draw the levels: 'place JUNCTION as NAME at 0 0 0'.";
Entries const works_entries{"part of the works",
                            "'place', 'join', 'inlet', 'outlet', 'number', 'for', 'outside'",
                            {"place", "join", "inlet", "outlet", "number", "for", "outside"},
                            {},
                            false,
                            in_works};
Entries const loop_entries{"repeated part of the works",
                           "'place', 'join', 'inlet', 'outlet', 'number', 'for'",
                           {"place", "join", "inlet", "outlet", "number", "for"},
                           {},
                           false,
                           in_works};

constexpr char const* surroundings[] = {"open", "rock"};
constexpr char const* turns[] = {"left", "right", "about"};
constexpr char time_name[] = "a duration such as 9 s or 180 ticks";

// ---- what follows the coordinates of a place: in any order, each once ----

// Refuses a word whose part of the place is there already.
template <auto Member>
struct Once {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    auto const& member = x3::_val(context).*Member;
    if (!is_there(member)) return;
    Reading& reading = x3::get<reading_tag>(context);
    Word const& again = x3::_attr(context);
    fail_ready(reading.gap_end, reading,
               fault("said-twice", "A place says the same of itself twice", again.span,
                     "this was said before",
                     "Say it once; several settings stand after one word, with commas between."));
  }
  template <class Value>
  static bool is_there(std::optional<Value> const& member) {
    return member.has_value();
  }
  template <class Value>
  static bool is_there(std::vector<Value> const& member) {
    return !member.empty();
  }
};

struct PutMirrored {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    Once<&PlaceDeclaration::mirrored>{}(context);
    x3::_val(context).mirrored = x3::_attr(context);
  }
};

struct number_setting_tag;
constexpr x3::rule<number_setting_tag, NumberSetting> number_setting{"a number's name"};
struct signal_setting_tag;
constexpr x3::rule<signal_setting_tag, SignalSetting> signal_setting{"a signal's name"};

// ---- parts of works ----

// A part, or what is outside: the latter only in the works itself.
struct Part {
  std::optional<WorksItem> item;
  std::optional<Word> outside;
};
using Entry = Repeated<Part>;

class TakePart {
 public:
  TakePart(WorksDeclaration& node, Reading& reading) : node_(node), reading_(reading) {}
  void operator()(Part&& part) {
    if (part.item) node_.items.push_back(std::move(*part.item));
    if (!part.outside) return;
    if (node_.outside)
      reading_.report(outside_twice("A works", node_.outside->span, part.outside->span));
    node_.outside = std::move(part.outside);
  }
  void begin(syntax::Loop& loop) const { loop.begin = node_.items.size(); }
  void end(syntax::Loop& loop) const { loop.end = node_.items.size(); }

 private:
  WorksDeclaration& node_;
  Reading& reading_;
};

struct placed_tag;
constexpr x3::rule<placed_tag, PlaceDeclaration> placed{"a place"};
struct join_tag;
constexpr x3::rule<join_tag, JoinDeclaration> join{"a join"};
struct port_tag;
constexpr x3::rule<port_tag, PortDeclaration> port{"an inlet or outlet"};
struct part_tag;
constexpr x3::rule<part_tag, Part> part{"a part of the works"};
struct outer_part_tag;
constexpr x3::rule<outer_part_tag, Part> outer_part{"a part of the works"};
struct repeated_tag;
constexpr x3::rule<repeated_tag, Entry> repeated{"a part of the works"};
struct outer_tag;
constexpr x3::rule<outer_tag, Entry> outer{"a part of the works"};

// clang-format off
auto const number_setting_def = spanned[
    Name("a number's name", true)[put<&NumberSetting::name>]
  > sign_here("=")
  > number_here("a number such as 3 or 2 * lanes")[put<&NumberSetting::value>]
];

auto const signal_setting_def = spanned[
    called("a signal's name", indexed, true)[put<&SignalSetting::name>]
  > sign_here("=")
  > expression_here("an expression such as 'divert and not flush'")[put<&SignalSetting::value>]
];

auto const a_number = called("the name of a number", number_setting)[append<&PlaceDeclaration::numbers>];
auto const next_number = called("the name of a number", number_setting, true)[append<&PlaceDeclaration::numbers>];
auto const a_signal = called("the name of a signal", signal_setting)[append<&PlaceDeclaration::signals>];
auto const next_signal = called("the name of a signal", signal_setting, true)[append<&PlaceDeclaration::signals>];

auto const more =
    (keyword("turned")[Once<&PlaceDeclaration::turned>{}]
      > OneOf("'left', 'right' or 'about'", turns)[put<&PlaceDeclaration::turned>])
  | keyword("mirrored")[PutMirrored{}]
  | (keyword("where")[Once<&PlaceDeclaration::numbers>{}] > a_number > *(sign(",") > next_number))
  | (keyword("with")[Once<&PlaceDeclaration::signals>{}] > a_signal > *(sign(",") > next_signal));

auto const placed_def = spanned[
    opens("place", place_form)
  > Name("the name of a junction or works")[put<&PlaceDeclaration::design>]
  > keyword("as")
  > indexed_name("a name")[put<&PlaceDeclaration::name>]
  > keyword("at")
  > called("a number (cells east)", coordinate)[put<&PlaceDeclaration::x>]
  > called("the second number (cells south)", coordinate)[put<&PlaceDeclaration::y>]
  > called("the third number (levels up)", coordinate)[put<&PlaceDeclaration::z>]
  > *more
];

auto const join_def = spanned[
    opens("join", join_form)
  > path_name("an outlet's name such as first.kiln")[put<&JoinDeclaration::outlet>]
  > sign_here("->")
  > path_name("an inlet's name such as second.millhouse")[put<&JoinDeclaration::inlet>]
  > -(keyword("taking") > called(time_name, duration)[put<&JoinDeclaration::duration>])
];

auto const own_name = indexed_name("a name")[put<&PortDeclaration::name>];
auto const port_def = spanned[
    (opens("inlet", inlet_form) > own_name > sign_here("=")
      > path_name("an inlet's name such as first.millhouse")[put<&PortDeclaration::port>])
  | (opens("outlet", outlet_form)[set<&PortDeclaration::is_outlet, true>] > own_name > sign_here("=")
      > path_name("an outlet's name such as first.kiln")[put<&PortDeclaration::port>])
];

auto const part_def =
    placed[put<&Part::item>]
  | join[put<&Part::item>]
  | port[put<&Part::item>]
  | number_declaration[put<&Part::item>];

auto const outer_part_def = outside[put<&Part::outside>] | part[become];

auto const repeated_def = spanned[part[put<&Entry::item>] | loop_of(loop_entries, repeated)];
auto const outer_def = spanned[outer_part[put<&Entry::item>] | loop_of(loop_entries, repeated)];

auto const outside_def = opens("outside", outside_form) > OneOf("'open' or 'rock'", surroundings)[become];

auto const works_def = spanned[
    opens("works", works_form)
  > Name("a name")[put<&WorksDeclaration::name>]
  > -QuotedText("a title", true)[put<&WorksDeclaration::title>]
  > block[repeated_entries<Part, TakePart>(outer, works_entries)]
];

auto const include_def = spanned[
    opens("include", include_form)
  > QuotedText("a file's name in quotes")[put<&syntax::IncludeDeclaration::file>]
];
// clang-format on

BOOST_SPIRIT_DEFINE(number_setting, signal_setting, placed, join, port)
BOOST_SPIRIT_DEFINE(part, outer_part, repeated, outer)

}  // namespace

BOOST_SPIRIT_DEFINE(outside, include, works)

struct outside_tag {};
struct include_tag {};
struct works_tag {};

BOOST_SPIRIT_INSTANTIATE(OutsideRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(IncludeRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(WorksRule, Iterator, Context)

}  // namespace leat::grammar
