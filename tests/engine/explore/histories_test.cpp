#include "engine/explore/histories.hpp"

#include "engine/water/settle.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;

namespace {

explore::Histories traced(model::Design const& design, std::size_t most_changes = 1000) {
  logic::Machine const machine(design.circuit);
  return explore::trace(design, machine, explore::reach(machine), {most_changes});
}

}  // namespace

TEST_CASE("a source that forms while a gate is open stays when it is closed again") {
  // Lever 0 lets a second source stand beside the gap: both form one between them, which stays.
  auto const design = drawn::draw({{"XXXXX"}, {"X.w.v"}, {"....."}});
  auto const found = traced(design);
  REQUIRE(found.is_complete);
  CHECK(found.settings.size() == 2);
  CHECK(found.waters.size() == 3);
}

TEST_CASE("without anything that remembers, each setting has one water") {
  auto const found = traced(drawn::draw({{"XXXXXX"}, {"w..a.."}, {"......"}}));
  CHECK(found.waters.size() == found.settings.size());
}

TEST_CASE("past the budget the trace says that it is incomplete") {
  auto const found = traced(drawn::draw({{"XXXXXX"}, {"w.ac.."}, {"......"}}), 2);
  CHECK_FALSE(found.is_complete);
}

TEST_CASE("past the budget of nodes or cells the trace is incomplete too") {
  auto const design = drawn::draw({{"XXXXXX"}, {"w.ac.."}, {"......"}});
  logic::Machine const machine(design.circuit);
  auto const states = explore::reach(machine);
  CHECK(explore::trace(design, machine, states, {}).is_complete);
  CHECK_FALSE(explore::trace(design, machine, states, {.most_nodes = 3}).is_complete);
  CHECK_FALSE(explore::trace(design, machine, states, {.most_cells = 100}).is_complete);
  // Four arrangements and four fields fit, of 8 x 3 x 5 cells with the rim.
  auto const cells = design.grid.size();
  CHECK(explore::trace(design, machine, states, {.most_cells = 2 * 4 * cells}).is_complete);
  CHECK_FALSE(explore::trace(design, machine, states, {.most_cells = 2 * 3 * cells}).is_complete);
}

TEST_CASE("what is not followed: each setting with its water from dry, made when it is asked for") {
  auto const design = drawn::remembering();
  drawn::Surveyed const surveyed(design, false);
  auto const& found = surveyed.histories;
  CHECK(found.is_complete);
  CHECK_FALSE(found.is_followed);
  REQUIRE(found.waters.size() == 2);
  for (std::uint32_t water = 0; water < 2; ++water) {
    CHECK(found.waters[water].is_fresh);
    CHECK(explore::field_of(surveyed.design, found, water) ==
          solve(design, {water == 1, false}).field);
  }
  CHECK(found.nodes.size() == surveyed.states.size());
  for (std::uint32_t node = 0; node < found.nodes.size(); ++node)
    CHECK(found.events_to(node) == surveyed.states.events_to(found.nodes[node].state));
}

TEST_CASE("which waters are those from dry is told of each") {
  drawn::Surveyed const surveyed(drawn::remembering());
  std::vector<bool> fresh;
  for (auto const& water : surveyed.histories.waters) fresh.push_back(water.is_fresh);
  CHECK(fresh == std::vector<bool>{true, true, false});
}

TEST_CASE("law: water after a switch is what the reference step makes of it") {
  int remembering = 0;
  for (unsigned seed = 0; seed < 150; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const arrangements = laws::arrangements_of(design);
    for (auto const& before : arrangements) {
      auto const field = water::settle_fresh(before).field;
      for (auto const& after : arrangements) {
        auto const quick = water::settle_switched(before, field, after);
        auto const slow = water::settle_switched_reference(before, field, after);
        INFO("seed " << seed);
        REQUIRE(quick.field == slow.field);
        REQUIRE(quick.is_settled == slow.is_settled);
        remembering += quick.field != water::settle_fresh(after).field ? 1 : 0;
      }
    }
  }
  CHECK(remembering > 5);
}
