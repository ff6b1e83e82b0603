#include "engine/explore/switching.hpp"

#include <algorithm>

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using explore::Danger;

namespace {

// Lever 0 shuts a run on its way to A.
model::Design shut_run() { return draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}}); }

// The switching that an event first brings in a state, given by the events to it.
explore::Switching const& switching_of(Surveyed const& surveyed,
                                       explore::Switchings const& switchings,
                                       std::vector<model::SignalId> const& flips,
                                       std::size_t event) {
  for (auto const& switching : switchings.all) {
    for (auto const& [node, by] : switching.occurrences) {
      if (by == event && explore::example_of(surveyed.explored, node).flips == flips)
        return switching;
    }
  }
  throw std::logic_error("no such change");
}

Danger const* danger(explore::Switching const& switching, Danger::Kind kind) {
  auto const found = std::find_if(switching.dangers.begin(), switching.dangers.end(),
                                  [&](Danger const& d) { return d.kind == kind; });
  return found == switching.dangers.end() ? nullptr : &*found;
}

// A short channel over a shaft down into a long one that leads to A; each has a source of its own.
// Lever 0 takes the upper source away, so that nobody goes on, and by a delay of it the lower one.
model::Design two_sources(int ticks) {
  auto design = draw(
      {{"XXXXXXXXX"}, {"Xw....A.X"}, {"X.......X"}, {"XX.XXXXXX"}, {"wisXXXXXX"}, {"...XXXXXX"}});
  auto const later = add(design, {model::SignalKind::delay, false, 0, 0, ticks});
  put(design, {0, 0, 4}, {model::material::open, model::material::water, 0});
  put(design, {1, 0, 1}, {model::material::open, model::material::water, later});
  return design;
}

// Lever 0 opens a first gate, at the height of a head, and shuts a second one so many ticks later.
// It lets water into a channel beside, which flows on for a while.
model::Design gates_in_turn(int ticks, model::Rule rule, int value) {
  auto design = draw({{"XXXXXXXX", "XXXXXXXX", "XXXXXXXX"},
                      {"wi.....A", "XXXXXXXX", "v......."},
                      {"...b....", "XXXXXXXX", "........"}});
  auto const later = add(design, {model::SignalKind::delay, false, 0, 0, ticks});
  put(design, {6, 0, 2}, {model::material::rock, model::material::open, later});
  design.practice.set(rule, value);
  return design;
}

}  // namespace

TEST_CASE("a gate that closes takes the cell of a body, and the water from those behind it") {
  Surveyed const surveyed(shut_run());
  auto const all = surveyed.switchings();
  REQUIRE(all.is_complete);
  REQUIRE(all.all.size() == 2);
  auto const& closing = switching_of(surveyed, all, {}, 0);
  auto const* crushed = danger(closing, Danger::Kind::crushed);
  REQUIRE(crushed);
  CHECK(crushed->cells == std::vector<model::Cell>{surveyed.design.grid.cell({3, 0, 1})});
  REQUIRE(danger(closing, Danger::Kind::trapped));
  CHECK_FALSE(explore::longest(closing.clearing));
}

TEST_CASE("a gate that opens before waiting bodies harms none") {
  Surveyed const surveyed(shut_run());
  auto const all = surveyed.switchings();
  auto const& opening = switching_of(surveyed, all, {0}, 0);
  CHECK(opening.dangers.empty());
  CHECK(explore::longest(opening.clearing));
}

TEST_CASE("a change that bodies do not meet harms none") {
  Surveyed const surveyed(draw({{"XXXXXXXXX"}, {"wi..A.X.a"}, {"......X.a"}}));
  auto const all = surveyed.switchings();
  REQUIRE(all.all.size() == 2);
  for (auto const& switching : all.all) CHECK(switching.dangers.empty());
}

TEST_CASE("clearing time: of each inlet and profile, and the longest of them") {
  // Both inlets lead to A, one of them from behind the gate.
  auto design = draw({{"XXXXXXXXX"}, {"wi.aj.A.X"}, {"...a....X"}});
  design.profiles.push_back({.footprint = 1, .height = 1});
  Surveyed const surveyed(design);
  auto const all = surveyed.switchings();
  auto const& opening = switching_of(surveyed, all, {0}, 0).clearing;
  REQUIRE(opening.size() == 4);
  // From the start of the run the body goes a whole trip once the water is back.
  REQUIRE(opening[0]);
  REQUIRE(opening[2]);
  CHECK(*opening[0] >= 5 * 19);
  CHECK(*opening[2] >= 2 * 19);
  CHECK(*opening[2] < *opening[0]);
  CHECK(explore::longest(opening) == opening[0]);
  using Clearing = explore::Clearing;
  CHECK(explore::longest(Clearing{3, 8, 5}) == 8);
  CHECK_FALSE(explore::longest(Clearing{3, {}, 5}));
  CHECK(explore::longest(Clearing{}) == 0);
}

TEST_CASE("trips: the longest in each water, none where a body is held") {
  auto design = draw({{"XXXXXXXXX"}, {"wi.aj.A.X"}, {"...a....X"}});
  design.profiles.push_back({.footprint = 1, .height = 1});
  auto const judgement = judge(design);
  REQUIRE(judgement.trips.size() == 2);
  using Clearing = explore::Clearing;
  CHECK(judgement.trips[0] == Clearing{5 * 19, 5 * 19, 2 * 19, 2 * 19});
  CHECK(judgement.trips[1] == Clearing{{}, {}, {}, {}});
}

TEST_CASE("the same change from the same water is one, wherever it happens") {
  // Either lever shuts the gate, so that the second one no longer moves a cell.
  auto design = shut_run();
  auto const either = design.circuit.add({model::Operator::disjunction, 0, 1});
  put(design, {3, 0, 1}, {model::material::rock, model::material::open, either});
  put(design, {3, 0, 2}, {model::material::rock, model::material::open, either});
  Surveyed const surveyed(design);
  auto const all = surveyed.switchings();
  REQUIRE(all.all.size() == 2);
  using Occurrences = std::vector<std::pair<std::uint32_t, std::size_t>>;
  CHECK(all.all[0].occurrences == Occurrences{{0, 0}, {0, 1}});
  CHECK(all.all[1].occurrences.size() == 2);
}

TEST_CASE("a guard by delay that lets bodies leave first has no danger") {
  Surveyed const surveyed(two_sources(400));
  auto const all = surveyed.switchings();
  auto const& stopping = switching_of(surveyed, all, {}, 0);
  REQUIRE(stopping.phases.size() == 2);
  CHECK(stopping.phases[1].tick - stopping.phases[0].tick == 400);
  CHECK(stopping.dangers.empty());
}

TEST_CASE("a guard by delay that is too short leaves bodies where the water leaves them") {
  Surveyed const surveyed(two_sources(40));
  auto const all = surveyed.switchings();
  auto const& stopping = switching_of(surveyed, all, {}, 0);
  REQUIRE(stopping.phases.size() == 2);
  auto const* trapped = danger(stopping, Danger::Kind::trapped);
  REQUIRE(trapped);
  auto const& grid = surveyed.design.grid;
  auto const is_there = [&](model::Place at) {
    return std::binary_search(trapped->cells.begin(), trapped->cells.end(), grid.cell(at));
  };
  CHECK(is_there({3, 0, 1}));
  CHECK_FALSE(is_there({1, 0, 4}));  // where both waters hold it anyway
}

TEST_CASE("a guard by delay: the shortest that is safe lies near the time bodies take to leave") {
  auto const is_safe = [](int ticks) {
    Surveyed const surveyed(two_sources(ticks));
    auto const all = surveyed.switchings();
    return switching_of(surveyed, all, {}, 0).dangers.empty();
  };
  int shortest = 10;
  while (shortest < 1000 && !is_safe(shortest)) shortest += 10;
  Surveyed const surveyed(two_sources(10));
  auto const trip = explore::longest(surveyed.trips()[0]);
  REQUIRE(trip);
  CAPTURE(shortest, *trip);
  CHECK(shortest >= *trip / 2);
  CHECK(shortest <= *trip + 60);  // as the water of the first phase needs to rest
  for (int ticks = shortest; ticks < shortest + 100; ticks += 10) CHECK(is_safe(ticks));
}

TEST_CASE("a change that comes late: those inside at the event have left, others have entered") {
  auto const late = [](int ticks) {
    auto design = shut_run();
    auto const later = add(design, {model::SignalKind::delay, false, 0, 0, ticks});
    for (int z : {1, 2})
      put(design, {3, 0, z}, {model::material::rock, model::material::open, later});
    return design;
  };
  int const trip = 5 * 19;
  Surveyed const slow(late(trip + 5));
  auto const all = slow.switchings();
  auto const& closing = switching_of(slow, all, {}, 0);
  REQUIRE(closing.phases.size() == 1);
  CHECK(closing.phases[0].tick == trip + 5);
  CHECK(explore::longest(closing.clearing) == trip);
  CHECK(danger(closing, Danger::Kind::crushed));  // of those who came after
  Surveyed const quick(late(trip - 5));
  auto const others = quick.switchings();
  CHECK_FALSE(explore::longest(switching_of(quick, others, {}, 0).clearing));
}

// Lever 0 puts water beside a shaft. It comes to a small body that has fallen less than two cells
// off the edge, which therefore drifts nowhere but rests in the corner of the basin.
TEST_CASE("a body to which the water comes forgets its side, as where it falls into water") {
  auto design = draw(
      {{"XXX.A.B"}, {"XsXA.XX"}, {"XXX..XX"}, {"XsX..XX"}, {".XX..XX"}, {"wi.s.XX"}, {"....XXX"}});
  design.profiles[0].height = 1;
  put(design, {1, 0, 3}, {model::material::water, model::material::sign, 0});
  put(design, {3, 0, 5}, {model::material::water, model::material::sign, 0});
  Surveyed const surveyed(design);
  auto const all = surveyed.switchings();
  auto const* trapped = danger(switching_of(surveyed, all, {}, 0), Danger::Kind::trapped);
  REQUIRE(trapped);
  auto const at = [&](int x, int z) { return design.grid.cell({x, 0, z}); };
  CHECK(trapped->cells == std::vector{at(4, 1), at(4, 2), at(4, 3), at(3, 4), at(3, 5)});
}

TEST_CASE("past the budget nothing is said of switching") {
  Surveyed const surveyed(two_sources(40));
  CHECK(surveyed.switchings().is_complete);
  for (auto const& budget : {explore::SwitchingBudget{.most_switchings = 1},
                             explore::SwitchingBudget{.most_occurrences = 3},
                             explore::SwitchingBudget{.most_ticks = 20}}) {
    auto const none = explore::switchings(surveyed.explored, budget);
    CHECK_FALSE(none.is_complete);
    CHECK(none.all.empty());
  }
  Surveyed const unfollowed(shut_run(), false);
  CHECK_FALSE(unfollowed.switchings().is_complete);
}

// Between two steps of the water a body goes as far as the water takes it: where these are long, or
// the current quick, through both gates.
TEST_CASE("bodies move between two steps of the water, however long or quick these are") {
  auto const is_misrouted = [](int ticks, model::Rule rule, int value) {
    Surveyed const surveyed(gates_in_turn(ticks, rule, value));
    auto const all = surveyed.switchings();
    return danger(switching_of(surveyed, all, {}, 0), Danger::Kind::misrouted) != nullptr;
  };
  using model::Rule;
  CHECK(is_misrouted(100, Rule::step_ticks, 5));
  CHECK(is_misrouted(100, Rule::step_ticks, 100));
  CHECK(is_misrouted(100, Rule::step_ticks, 1000));
  CHECK_FALSE(is_misrouted(10, Rule::step_ticks, 5));
  CHECK(is_misrouted(10, Rule::water_push, 200));
  CHECK(is_misrouted(10, Rule::water_drag, 990));
}
