#include "lang/grammar/rules.hpp"

// One thing that a design should do: the clauses of expect { ... }.
namespace leat::grammar {

namespace {

using syntax::Clause;
using syntax::ClauseKind;

constexpr Form clause_form{"clause",
                           "INLET reaches OUTLET when EXPRESSION, BODY never trapped, "
                           "findings none, ..."};
constexpr Form route_form{"clause", "INLET reaches OUTLET, or BODY from INLET reaches OUTLET"};
constexpr Form never_form{"clause", "BODY never trapped, or INLET never reaches OUTLET"};
constexpr Form clear_form{"clause", "clear within 12 s, or INLET clear within 240 ticks"};
constexpr Form deals_form{"clause",
                          "INLET deals OUTLET, nothing, OUTLET every 40 ticks, or ... every 40 "
                          "ticks for 4 rounds"};
constexpr Form findings_form{"clause", "findings none, or findings none above note"};
constexpr Form finds_form{"clause", "finds FINDING, or finds FINDING at JUNCTION 3 4 0"};
constexpr Form after_form{"clause", "after divert, passed: INLET reaches OUTLET"};

constexpr char const* states[] = {"trapped", "spilled", "split", "doubtful", "lost"};
constexpr char const* severities[] = {"note", "warning", "error"};
constexpr char const* round_words[] = {"rounds", "round"};
constexpr char outlet_name[] = "an outlet's name";
constexpr char outlet_or_nothing[] = "an outlet's name or 'nothing'";
constexpr char time_name[] = "a duration such as 240 ticks or 12 s";
constexpr char event_name[] = "the name of an input";

// "subject" was read before `from` showed it to be the body.
struct TurnToBody {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    Clause& node = x3::_val(context);
    node.body = std::move(node.subject);
    node.subject = std::move(x3::_attr(context));
  }
};

// Where nothing of a clause follows: events alone are no clause, and what stands there is at fault.
struct NoClauseAfterEvents : x3::parser<NoClauseAfterEvents> {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static bool const has_attribute = false;
  template <class AnyContext, class Attribute>
  bool parse(Iterator& first, Iterator const&, AnyContext const&, Clause& node, Attribute&) const {
    if (node.events.empty()) return false;
    throw Failure(first, "a clause such as 'INLET reaches OUTLET'");
  }
};

template <ClauseKind Kind>
inline constexpr auto kind = set<&Clause::kind, Kind>;

// clang-format off
auto const object = put<&Clause::object>;
auto const outlet = path_name(outlet_name)[object];
auto const state = OneOf("'trapped', 'spilled', 'split', 'doubtful' or 'lost'", states)[object];
auto const lasting = called(time_name, duration)[put<&Clause::duration>];

auto const condition =
    -(  (keyword("when") > expression_here(condition_name)[put<&Clause::condition>])
      | keyword("otherwise")[set<&Clause::is_otherwise, true>]);

auto const event = append<&Clause::events>;
auto const events =
    opens("after", after_form) > path_name(event_name)[event]
      > *(sign_here(",") > path_name(event_name, true)[event]) > called("',' or ':'", sign(":"));

auto const dealt = append<&Clause::dealt>;
auto const clearing = opens("clear", clear_form)[kind<ClauseKind::clears>] > keyword("within") > lasting;

auto const dealing =
    opens("deals", deals_form)[kind<ClauseKind::deals>]
      > called(outlet_or_nothing, path_name(outlet_name)[dealt] | keyword("nothing")[dealt])
      > *(sign_here(",") > called(outlet_or_nothing, path_name(outlet_name, true)[dealt] | keyword("nothing")[dealt], true))
      > called("',' or 'every'", keyword("every"), true) > lasting
      > -(keyword("for") > WholeNumber("a number of rounds")[put<&Clause::rounds>] > OneOf("'rounds'", round_words));

auto const predicate =
    (opens("reaches", route_form)[kind<ClauseKind::reaches>]
      > called(outlet_or_nothing, outlet | keyword("nothing")[object]))
  | (opens("may", route_form)[kind<ClauseKind::may_reach>] > keyword("reach") > outlet)
  | (opens("never", never_form)
      > called("'reaches' or a state such as 'trapped'",
            (keyword("reaches")[kind<ClauseKind::never_reaches>] > outlet)
          | state[kind<ClauseKind::never_state>]))
  | clearing
  | dealing;

auto const clause_def = spanned[
    -events
  >> (
        (opens("findings", findings_form)[kind<ClauseKind::findings_none>] > keyword("none")
          > -(keyword("above") > OneOf("'note', 'warning' or 'error'", severities)[object]))
      | (opens("finds", finds_form)[kind<ClauseKind::finds>] > FindingName("a finding's name")[object]
          > -(keyword("at") > called("a place such as 3 4 0", place)[put<&Clause::place>]))
      | (opens("never", never_form)[kind<ClauseKind::never_state>] > state > condition)
      | (clearing > condition)
      | (path_name("a clause", true)[put<&Clause::subject>] >> enter(clause_form)
          >> -(keyword("from") > path_name("an inlet's name")[TurnToBody{}])
           > called("'reaches', 'may reach', 'never', 'clear' or 'deals'", predicate) > condition)
      | NoClauseAfterEvents())
];
// clang-format on

}  // namespace

BOOST_SPIRIT_DEFINE(clause)

struct clause_tag {};

BOOST_SPIRIT_INSTANTIATE(ClauseRule, Iterator, Context)

}  // namespace leat::grammar
