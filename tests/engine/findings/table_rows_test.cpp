#include "engine/findings/table_gap.hpp"
#include "engine/judge.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

namespace {

// A gate that lever 0 switches; lever 1 changes nothing. The rows of one expected table are added.
struct Tabled {
  model::Design design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  std::uint32_t rows = 0;

  model::ExpressionId lever(model::SignalId id, bool is_on) {
    auto const on = design.circuit.add({model::Operator::signal, id, 0});
    return is_on ? on : design.circuit.add({model::Operator::negation, on, 0});
  }
  model::ExpressionId both(model::ExpressionId a, model::ExpressionId b) {
    return design.circuit.add({model::Operator::conjunction, a, b});
  }
  void row(std::optional<model::ExpressionId> when) {
    design.expectations.push_back({.claim = model::Claim::may_reach,
                                   .inlet = 0,
                                   .outlet = 0,
                                   .condition = when,
                                   .table = 0,
                                   .table_row = rows++});
  }
  std::vector<findings::Finding> of(FindingKind kind) const {
    std::vector<findings::Finding> found;
    for (auto const& finding : judge(design).findings) {
      if (finding.kind == kind) found.push_back(finding);
    }
    return found;
  }
};

}  // namespace

TEST_CASE("table rows: what no row speaks of is a gap, one for each way the bodies go then") {
  Tabled tabled;
  tabled.row(tabled.both(tabled.lever(0, false), tabled.lever(1, false)));
  auto const gaps = tabled.of(FindingKind::table_gap);
  std::size_t combinations = 0;
  for (auto const& gap : gaps) combinations += gap.rows.count();
  CHECK(combinations == 3);
  CHECK(gaps.size() == 2);
  CHECK(tabled.of(FindingKind::shadowed_row).empty());
}

TEST_CASE("table rows: a gap in which bodies part is told apart, for no row holds there") {
  Tabled tabled;
  // The gate is one cell high on level 1 where lever 1 shuts it: only the low body passes below.
  tabled.design = draw({{"XXXXXXX"}, {"wi.a..A"}, {"....c.."}});
  tabled.design.profiles.push_back({.height = 1});
  tabled.row(tabled.both(tabled.lever(0, false), tabled.lever(1, false)));
  std::size_t parting = 0, same_way = 0;
  for (auto const& gap : tabled.of(FindingKind::table_gap)) {
    auto const is_parting = gap.measured == static_cast<int>(findings::Gap::parting);
    (is_parting ? parting : same_way) += gap.rows.count();
    CHECK(gap.outlets.empty());
  }
  CHECK(parting == 1);   // lever 1 alone
  CHECK(same_way == 2);  // lever 0 holds them both
}

TEST_CASE("table rows: a whole table has no gap") {
  Tabled tabled;
  tabled.row(tabled.lever(0, false));
  tabled.row(tabled.lever(0, true));
  for (auto kind :
       {FindingKind::table_gap, FindingKind::shadowed_row, FindingKind::overlapping_rows})
    CHECK(tabled.of(kind).empty());
}

TEST_CASE("table rows: a row that earlier ones say is shadowed") {
  Tabled tabled;
  tabled.row(std::nullopt);
  tabled.row(tabled.lever(1, true));
  auto const shadowed = tabled.of(FindingKind::shadowed_row);
  REQUIRE(shadowed.size() == 1);
  CHECK(shadowed.front().expectation == 1);
  CHECK(tabled.of(FindingKind::overlapping_rows).empty());
}

TEST_CASE("table rows: rows that share some combinations overlap") {
  Tabled tabled;
  tabled.row(tabled.lever(0, true));
  tabled.row(tabled.lever(1, true));
  auto const overlaps = tabled.of(FindingKind::overlapping_rows);
  REQUIRE(overlaps.size() == 1);
  CHECK(overlaps.front().rows.count() == 1);
  CHECK(tabled.of(FindingKind::table_gap).size() == 1);
}

TEST_CASE("table rows: a row that names two outlets is one row") {
  Tabled tabled;
  tabled.row(std::nullopt);
  tabled.design.expectations.push_back(tabled.design.expectations.back());
  CHECK(tabled.of(FindingKind::shadowed_row).empty());
}
