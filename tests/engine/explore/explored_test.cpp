#include "engine/explore/explored.hpp"

#include "engine/contract.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using Flips = std::vector<model::SignalId>;

namespace {

// The water remembers, and so does a latch that lever 0 sets for ever.
model::Design remembering_twice() {
  auto design = remembering();
  auto const never = design.circuit.add({model::Operator::constant, 0, 0});
  add(design, {model::SignalKind::latch, false, 0, never, 0});
  return design;
}

void check_walks(Surveyed const& surveyed) {
  auto const& histories = surveyed.histories;
  for (std::uint32_t node = 0; node < histories.nodes.size(); ++node) {
    auto const example = explore::example_of(surveyed.explored, node);
    auto const walked = explore::walk(surveyed.design, surveyed.machine, example.flips);
    auto const& water = histories.waters[histories.nodes[node].water];
    REQUIRE(walked.is_quiet);
    REQUIRE(walked.signals ==
            surveyed.machine.values(surveyed.states.codes[histories.nodes[node].state]));
    REQUIRE(walked.setting == histories.settings[water.setting]);
    REQUIRE(walked.field == water.field);
    REQUIRE(walked.is_settled == water.is_settled);
    auto const again = explore::example_of(surveyed.design, surveyed.combinations, walked, {});
    REQUIRE(again.row == example.row);
    REQUIRE(again.is_fresh == example.is_fresh);
    REQUIRE_FALSE(again.water);
  }
}

}  // namespace

TEST_CASE("a walk along the events to a node ends in its state, its cells and its water") {
  check_walks(Surveyed(remembering()));
  check_walks(Surveyed(remembering_twice()));
  int fresh = 0, remembered = 0;
  for (unsigned seed = 0; seed < 60; ++seed) {
    INFO("seed " << seed);
    Surveyed const surveyed(laws::random_junction(seed));
    check_walks(surveyed);
    for (auto const& water : surveyed.histories.waters) ++(water.is_fresh ? fresh : remembered);
  }
  CHECK(fresh > 60);
  CHECK(remembered > 5);
}

TEST_CASE("a walk without events is as built, and counts the steps of the last change") {
  auto const design = draw({{"XXXXXX"}, {"w..a.."}, {"......"}});
  logic::Machine const machine(design.circuit);
  auto const stood = explore::walk(design, machine, {});
  CHECK(stood.field == solve(design, {false, false}).field);
  CHECK(stood.steps == solve(design, {false, false}).steps);
  CHECK(stood.signals == std::vector<bool>{false, false});
  // Behind the block two cells, of strength 4 and 3, hold each other for a while: 2 3, 2 1, dry 1,
  // and dry both.
  auto const shut = explore::walk(design, machine, {0});
  CHECK(shut.steps == 4);
  CHECK(explore::walk(design, machine, {0, 1}).steps == 4);  // lever 1 moves no cell
}

TEST_CASE("a walk stops where the logic does not get quiet") {
  auto design = draw({{"a."}});
  add_restless(design, 0);
  logic::Machine const machine(design.circuit);
  CHECK(explore::walk(design, machine, {1}).is_quiet);
  CHECK_FALSE(explore::walk(design, machine, {0}).is_quiet);
  CHECK_FALSE(explore::walk(design, machine, {0, 0}).is_quiet);
}

TEST_CASE("only inputs are flipped by a walk") {
  auto const design = remembering_twice();
  logic::Machine const machine(design.circuit);
  CHECK_THROWS_AS(explore::walk(design, machine, {2}), ContractBroken);
  CHECK_THROWS_AS(explore::walk(design, machine, {9}), ContractBroken);
}

TEST_CASE("events flip levers and clocks once, buttons and plates twice") {
  model::Circuit circuit;
  for (auto kind : {model::SignalKind::lever, model::SignalKind::button, model::SignalKind::plate,
                    model::SignalKind::clock}) {
    circuit.signals.push_back({kind, false, 0, 0, 10});
  }
  CHECK(explore::flips_of(circuit, {0, 1, 0, 3, 2}) == Flips{0, 1, 1, 0, 3, 2, 2});
  CHECK(explore::flips_of(circuit, {}).empty());
}

TEST_CASE("the nearest example: the fewest events, whatever the number of the row") {
  Surveyed const surveyed(draw({{"a."}}));
  auto const all = logic::RowSet(2, true);
  auto const as_built = explore::nearest_example(surveyed.explored, all);
  REQUIRE(as_built);
  CHECK(as_built->flips.empty());
  CHECK(as_built->row == 0);
  CHECK(as_built->is_fresh);
  auto const on = explore::nearest_example(surveyed.explored, logic::RowSet::where_on(2, 0));
  REQUIRE(on);
  CHECK(on->flips == Flips{0});
  CHECK(on->row == 2);
  auto const both = explore::nearest_example(
      surveyed.explored, logic::RowSet::where_on(2, 0) & logic::RowSet::where_on(2, 1));
  REQUIRE(both);
  CHECK(both->flips == Flips{0, 1});
  CHECK_FALSE(explore::nearest_example(surveyed.explored, logic::RowSet(2)));
}

TEST_CASE("the nearest example starts from as built, not from all off") {
  auto design = draw({{"a."}});
  design.circuit.signals[0].starts_on = true;
  Surveyed const surveyed(design);
  auto const off = explore::nearest_example(surveyed.explored, ~logic::RowSet::where_on(2, 0));
  REQUIRE(off);
  CHECK(off->flips == Flips{0});
  CHECK(off->row == 0);
}

TEST_CASE("the nearest example with a water: the events that bring it") {
  Surveyed const surveyed(remembering());
  auto const off = ~logic::RowSet::where_on(2, 0);
  auto const kept = explore::nearest_example(surveyed.explored, off, {2});
  REQUIRE(kept);
  CHECK(kept->flips == Flips{0, 0});
  CHECK(kept->water == 2u);
  CHECK_FALSE(kept->is_fresh);
  CHECK(explore::nearest_example(surveyed.explored, off, {0, 2})->flips.empty());
  CHECK_FALSE(explore::nearest_example(surveyed.explored, off, {1}));
}
