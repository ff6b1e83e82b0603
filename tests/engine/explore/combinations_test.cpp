#include "engine/explore/combinations.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

using Numbers = std::vector<std::uint32_t>;
constexpr auto never = explore::Combinations::never;

Numbers situations_of(model::Design const& design) {
  return Surveyed(design).combinations.situation_of_row;
}

// A run that lever 0 shuts, with a latch that it sets and lever 1 resets.
model::Design latched(bool starts_on) {
  auto design = draw({{"a."}});
  add(design, {model::SignalKind::latch, starts_on, 0, 1, 0});
  return design;
}

}  // namespace

TEST_CASE("every combination of the inputs is a row, gathered by what it makes of the cells") {
  Surveyed const surveyed(draw({{"ac"}}));
  auto const& combinations = surveyed.combinations;
  CHECK(combinations.variables == std::vector<model::SignalId>{0, 1});
  CHECK(combinations.situation_of_row == Numbers{0, 1, 2, 3});
  CHECK(combinations.situations.size() == 4);
  CHECK(combinations.reachable.is_full());
}

TEST_CASE("rows that make the same of the cells share a situation") {
  CHECK(situations_of(draw({{"a."}})) == Numbers{0, 0, 1, 1});
  CHECK(situations_of(draw({{"c."}})) == Numbers{0, 1, 0, 1});
  CHECK(situations_of(draw({{".."}})) == Numbers{0, 0, 0, 0});
  CHECK(situations_of(draw({{"ab"}})) == Numbers{0, 0, 1, 1});
}

TEST_CASE("rows of chosen situations") {
  Surveyed const surveyed(draw({{"a."}}));
  auto const rows = surveyed.combinations.rows_where([](auto situation) { return situation == 1; });
  CHECK(rows == logic::RowSet::where_on(2, 0));
  CHECK(surveyed.combinations.rows_where([](auto) { return false; }).is_empty());
}

TEST_CASE("combinations that the machine never comes to are no rows of any situation") {
  // Rows are lever 0, lever 1, latch: it is set while lever 0 is on, reset by lever 1 alone.
  Surveyed const surveyed(latched(false));
  auto const& combinations = surveyed.combinations;
  CHECK(combinations.variables == std::vector<model::SignalId>{0, 1, 2});
  // Off while lever 0 is on: 100 and 110; on while only lever 1 is: 011.
  CHECK(combinations.situation_of_row == Numbers{0, 0, 0, never, never, 1, never, 1});
  CHECK(combinations.reachable.count() == 5);
  for (logic::Row row = 0; row < 8; ++row)
    CHECK(combinations.reachable.contains(row) == (combinations.situation_of_row[row] != never));
}

TEST_CASE("every state has the row of its own values") {
  Surveyed const surveyed(latched(true));
  REQUIRE(surveyed.states.size() == 5);
  for (std::size_t state = 0; state < surveyed.states.size(); ++state) {
    auto const values = surveyed.machine.values(surveyed.states.codes[state]);
    logic::Row const row = (values[0] ? 4u : 0u) + (values[1] ? 2u : 0u) + (values[2] ? 1u : 0u);
    CHECK(surveyed.combinations.row_of_state[state] == row);
    CHECK(surveyed.combinations.row_of(values) == row);
  }
}

TEST_CASE("a situation holds every water that its rows can come with") {
  Surveyed const surveyed(remembering());
  auto const& combinations = surveyed.combinations;
  REQUIRE(surveyed.histories.waters.size() == 3);  // as built, with both sources, and after that
  CHECK(combinations.situation_of_row == Numbers{0, 0, 1, 1});
  CHECK(combinations.situations == std::vector<Numbers>{{0, 2}, {1}});
}

TEST_CASE("rows that share some of their waters and not all are other situations") {
  // A latch keeps whether lever 0 was ever on: without it the water is as built, with it it is not.
  Surveyed const surveyed([] {
    auto design = remembering();
    auto const never_on = design.circuit.add({model::Operator::constant, 0, 0});
    add(design, {model::SignalKind::latch, false, 0, never_on, 0});
    return design;
  }());
  auto const& combinations = surveyed.combinations;
  CHECK(combinations.situation_of_row == Numbers{0, 1, 0, 1, never, 2, never, 2});
  CHECK(combinations.situations == std::vector<Numbers>{{0}, {2}, {1}});
}

TEST_CASE("rows with a water: those whose situation holds it") {
  Surveyed const surveyed(remembering());
  auto const& combinations = surveyed.combinations;
  auto const on = logic::RowSet::where_on(2, 0);
  CHECK(combinations.rows_with({0}) == ~on);
  CHECK(combinations.rows_with({1}) == on);
  CHECK(combinations.rows_with({2}) == ~on);
  CHECK(combinations.rows_with({1, 2}).is_full());
  CHECK(combinations.rows_with({}).is_empty());
}
