#include "lang/grammar/repeated.hpp"

// What a design should do: expect { ... } and expect table { ... }.
namespace leat::grammar {

namespace {

using syntax::Clause;
using syntax::ExpectDeclaration;
using syntax::TableDeclaration;
using syntax::TableRow;

constexpr Form expect_form{"expectation", "expect \"title\" of JUNCTION { ... }"};
constexpr Form table_form{"table", "expect table INLET { divert | route ... }, one row a line"};

constexpr Form row_form{"row of the table", "1 0 - | OUTLET, one setting for each signal"};

Entries const clause_entries{
    "clause", "an inlet or body, 'after', 'never', 'clear', 'findings', 'finds', 'for'",
    {},       {},
    true,     "",
    ",:"};
Entries const row_entries{"row of the table", "'0', '1', '-'", {}, {}, true, ""};

constexpr char const* route_heading[] = {"route"};
constexpr char const* settings[] = {"0", "1", "-"};
constexpr char outlet_name[] = "an outlet's name";
constexpr char outlet_or_nothing[] = "an outlet's name or 'nothing'";

struct TurnInletToBody {
  template <class ActionContext>
  void operator()(ActionContext const& context) const {
    TableDeclaration& node = x3::_val(context);
    node.body = std::move(node.inlet);
    node.inlet = std::move(x3::_attr(context));
  }
};

using Entry = Repeated<Clause>;

class TakeClause {
 public:
  TakeClause(ExpectDeclaration& node, Reading&) : clauses_(node.clauses) {}
  void operator()(Clause&& clause) { clauses_.push_back(std::move(clause)); }
  void begin(syntax::Loop& loop) const { loop.begin = clauses_.size(); }
  void end(syntax::Loop& loop) const { loop.end = clauses_.size(); }

 private:
  std::vector<Clause>& clauses_;
};

struct entry_tag;
constexpr x3::rule<entry_tag, Entry> entry{"a clause"};
struct row_tag;
constexpr x3::rule<row_tag, TableRow> row{"a row"};

// clang-format off
auto const entry_def = spanned[loop_of(clause_entries, entry) | clause[put<&Entry::item>]];

auto const expect_def = spanned[
    opens("expect", expect_form)
  > -QuotedText("a title")[put<&ExpectDeclaration::title>]
  > -(keyword("of") > Name("the name of a junction or works")[put<&ExpectDeclaration::junction>])
  > block[repeated_entries<Clause, TakeClause>(entry, clause_entries)]
];

auto const listed_outlet = called(outlet_or_nothing,
    path_name(outlet_name)[append<&TableRow::outlets>] | keyword("nothing")[append<&TableRow::outlets>]);
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
     -(path_name("a signal's name", true)[heading] >> *path_name("a signal's name")[heading])
  >> x3::expect[called("a signal's name or '|'", sign("|"), true)]
   > OneOf("'route'", route_heading);

auto const table_def = spanned[
    (opens("expect", table_form) >> keyword("table"))
  > path_name("an inlet's name")[put<&TableDeclaration::inlet>]
  > -(keyword("from") > path_name("an inlet's name")[TurnInletToBody{}])
  > -(keyword("of") > Name("the name of a junction or works")[put<&TableDeclaration::junction>])
  > block[headings >> entries_of<TableRow>(row, row_entries)[put<&TableDeclaration::rows>]]
];
// clang-format on

BOOST_SPIRIT_DEFINE(entry, row)

}  // namespace

BOOST_SPIRIT_DEFINE(expect, table)

struct expect_tag {};
struct table_tag {};

BOOST_SPIRIT_INSTANTIATE(ExpectRule, Iterator, Context)
BOOST_SPIRIT_INSTANTIATE(TableRule, Iterator, Context)

}  // namespace leat::grammar
