#include "engine/explore/histories.hpp"

#include <algorithm>
#include <map>
#include <set>

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

// Goes through the nodes of a trace once more, one change after the other, and requires that each
// new one has the next number.
class Turns {
 public:
  Turns(model::Design const& design, explore::States const& states, explore::Histories const& found)
      : design_(design), found_(found) {
    for (std::uint32_t node = 0; node < found.nodes.size(); ++node) {
      for (std::size_t event = 0; event < states.events; ++event)
        leave(node, event, states.after(found.nodes[node].state, event));
    }
    REQUIRE((met_.size() == found.nodes.size() && waters_ == found.waters.size()));
  }

  std::size_t changes() const { return change_.size(); }

 private:
  void leave(std::uint32_t from, std::size_t event, std::uint32_t state) {
    auto const water = water_after(found_.nodes[from].water, found_.setting_of_state[state]);
    auto const next = met_.size();
    if (!met_.emplace(state, water).second) return;
    REQUIRE(next < found_.nodes.size());
    auto const& node = found_.nodes[next];
    REQUIRE((node.state == state && node.water == water));
    REQUIRE((node.parent == from && node.event == event));
  }

  std::uint32_t water_after(std::uint32_t from, std::uint32_t setting) {
    auto const& before = found_.waters[from];
    if (setting == before.setting) return from;
    auto const [entry, is_new] = change_.try_emplace({from, setting}, 0);
    if (!is_new) return entry->second;
    auto const settled =
        water::settle_switched({design_, found_.settings[before.setting]}, before.field,
                               {design_, found_.settings[setting]}, before.is_settled);
    std::uint32_t water = 0;
    while (water < waters_ &&
           (found_.waters[water].setting != setting || found_.waters[water].field != settled.field))
      ++water;
    if (water == waters_) ++waters_;
    REQUIRE(waters_ <= found_.waters.size());
    REQUIRE(found_.waters[water].field == settled.field);
    REQUIRE(found_.waters[water].is_settled == settled.is_settled);
    return entry->second = water;
  }

  model::Design const& design_;
  explore::Histories const& found_;
  std::set<std::pair<std::uint32_t, std::uint32_t>> met_{{0, 0}};
  std::map<std::pair<std::uint32_t, std::uint32_t>, std::uint32_t> change_;
  std::uint32_t waters_ = 1;
};

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

TEST_CASE(
    "law: waters and nodes are numbered, and budgets end, as if changes were settled in turn") {
  std::size_t most_changes = 0;
  for (unsigned seed = 0; seed < 150; ++seed) {
    INFO("seed " << seed);
    auto const design = laws::with_many_levers(laws::random_junction(seed), seed);
    logic::Machine const machine(design.circuit);
    auto const states = explore::reach(machine);
    auto const found = explore::trace(design, machine, states, {});
    REQUIRE(Turns(design, states, found).changes() == found.changes);
    most_changes = std::max(most_changes, found.changes);
    for (auto most : {found.changes, found.changes - std::min<std::size_t>(found.changes, 1),
                      found.changes / 2}) {
      auto const within = explore::trace(design, machine, states, {.most_changes = most});
      REQUIRE(within.is_complete == (most == found.changes));
      REQUIRE(within.changes == most);
    }
  }
  CHECK(most_changes > 600);
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
