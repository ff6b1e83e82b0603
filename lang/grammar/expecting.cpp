#include <fmt/format.h>

#include "lang/diagnostics/catalogue.hpp"
#include "lang/grammar/rules.hpp"

// What a design should do: expect { ... } and expect table { ... }.
namespace leat::grammar {

namespace {

using syntax::Clause;
using syntax::ClauseKind;
using syntax::ExpectDeclaration;
using syntax::TableDeclaration;
using syntax::TableRow;

constexpr Form clause_form{"clause",
                           "INLET reaches OUTLET when EXPRESSION, BODY never trapped, "
                           "findings none, ..."};
constexpr Form route_form{"clause", "INLET reaches OUTLET, or BODY from INLET reaches OUTLET"};
constexpr Form never_form{"clause", "BODY never trapped, or INLET never reaches OUTLET"};
constexpr Form findings_form{"clause", "findings none, or findings none above note"};
constexpr Form finds_form{"clause", "finds FINDING, or finds FINDING at JUNCTION 3 4 0"};
constexpr Form expect_form{"expectation", "expect \"title\" of JUNCTION { ... }"};
constexpr Form table_form{"table", "expect table INLET { divert | route ... }, one row a line"};

constexpr Form row_form{"row of the table", "1 0 - | OUTLET, one setting for each signal"};

Entries const clause_entries{
    "clause", "an inlet or body, 'never', 'findings', 'finds'", {}, {}, true, ""};
Entries const row_entries{"row of the table", "'0', '1', '-'", {}, {}, true, ""};

constexpr char const* states[] = {"trapped", "spilled", "split", "doubtful", "lost"};
constexpr char const* severities[] = {"note", "warning", "error"};
constexpr char const* route_heading[] = {"route"};
constexpr char const* settings[] = {"0", "1", "-"};
constexpr char outlet_name[] = "an outlet's name";
constexpr char outlet_or_nothing[] = "an outlet's name or 'nothing'";

// A clause of a later edition: known by its first word, and said so.
struct LaterClause : x3::parser<LaterClause> {
  using attribute_type = x3::unused_type;
  [[maybe_unused]] static bool const has_attribute = false;
  template <class AnyContext, class RuleContext, class Attribute>
  bool parse(Iterator& first, Iterator const&, AnyContext const& context, RuleContext&,
             Attribute&) const {
    Reading& reading = x3::get<reading_tag>(context);
    for (char const* word : {"after", "clear"}) {
      syntax::Word read;
      if (!read_keyword(first, word, reading, read)) continue;
      fail_ready(first, reading, of_later_edition(read));
    }
    return false;
  }
};

// "subject" was read before `from` showed it to be the body.
struct TurnToBody {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    Clause& clause = x3::_val(context);
    clause.body = std::move(clause.subject);
    clause.subject = std::move(x3::_attr(context));
  }
};

struct TurnInletToBody {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    TableDeclaration& node = x3::_val(context);
    node.body = std::move(node.inlet);
    node.inlet = std::move(x3::_attr(context));
  }
};

template <ClauseKind Kind>
inline constexpr auto kind = set<&Clause::kind, Kind>;

struct clause_tag;
constexpr x3::rule<clause_tag, Clause> clause{"a clause"};
struct row_tag;
constexpr x3::rule<row_tag, TableRow> row{"a row"};

// clang-format off
auto const object = put<&Clause::object>;
auto const outlet = Name(outlet_name)[object];
auto const state = OneOf("'trapped', 'spilled', 'split', 'doubtful' or 'lost'", states)[object];

auto const condition =
    -(  (keyword("when") > expression_here(condition_name)[put<&Clause::condition>])
      | keyword("otherwise")[set<&Clause::is_otherwise, true>]);

auto const predicate =
    (opens("reaches", route_form)[kind<ClauseKind::reaches>]
      > called(outlet_or_nothing, outlet | keyword("nothing")[object]))
  | (opens("may", route_form)[kind<ClauseKind::may_reach>] > keyword("reach") > outlet)
  | (opens("never", never_form)
      > called("'reaches' or a state such as 'trapped'",
            (keyword("reaches")[kind<ClauseKind::never_reaches>] > outlet)
          | state[kind<ClauseKind::never_state>]));

auto const clause_def = spanned[
    LaterClause()
  | (opens("findings", findings_form)[kind<ClauseKind::findings_none>] > keyword("none")
      > -(keyword("above") > OneOf("'note', 'warning' or 'error'", severities)[object]))
  | (opens("finds", finds_form)[kind<ClauseKind::finds>] > FindingName("a finding's name")[object]
      > -(keyword("at") > called("a place such as 3 4 0", place)[put<&Clause::place>]))
  | (opens("never", never_form)[kind<ClauseKind::never_state>] > state > condition)
  | (Name("a clause", true)[put<&Clause::subject>] >> enter(clause_form)
      >> -(keyword("from") > Name("an inlet's name")[TurnToBody{}])
       > called("'reaches', 'may reach' or 'never'", predicate) > condition)
];

auto const expect_def = spanned[
    opens("expect", expect_form)
  > -QuotedText("a title")[put<&ExpectDeclaration::title>]
  > -(keyword("of") > Name("a junction's name")[put<&ExpectDeclaration::junction>])
  > block[entries_of<Clause>(clause, clause_entries)[put<&ExpectDeclaration::clauses>]]
];

auto const listed_outlet = called(outlet_or_nothing,
    Name(outlet_name)[append<&TableRow::outlets>] | keyword("nothing")[append<&TableRow::outlets>]);
auto const setting = append<&TableRow::settings>;

auto const row_def = spanned[
     enter(row_form)
  >> (  (OneOf("a setting", settings, true)[setting] > *OneOf("a setting", settings)[setting]
          > called("'0', '1', '-' or '|'", sign_here("|")))
      | sign("|"))
   > listed_outlet > *(sign_here(",") > listed_outlet)
];

auto const heading = append<&TableDeclaration::headings>;

auto const headings =
     -(Name("a signal's name", true)[heading] >> *Name("a signal's name")[heading])
  >> x3::expect[called("a signal's name or '|'", sign("|"), true)]
   > OneOf("'route'", route_heading);

auto const table_def = spanned[
    (opens("expect", table_form) >> keyword("table"))
  > Name("an inlet's name")[put<&TableDeclaration::inlet>]
  > -(keyword("from") > Name("an inlet's name")[TurnInletToBody{}])
  > -(keyword("of") > Name("a junction's name")[put<&TableDeclaration::junction>])
  > block[headings >> entries_of<TableRow>(row, row_entries)[put<&TableDeclaration::rows>]]
];
// clang-format on

BOOST_SPIRIT_DEFINE(clause, row)

}  // namespace

BOOST_SPIRIT_DEFINE(expect, table)

struct expect_tag {};
struct table_tag {};

BOOST_SPIRIT_INSTANTIATE(ExpectRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(TableRule, Iterator, Context)

}  // namespace leat::grammar
