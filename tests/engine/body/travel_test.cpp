#include "engine/body/pace.hpp"
#include "engine/body/travel.hpp"

#include <cmath>

#include "tests/support/catch.hpp"
#include "tests/support/hand_graph.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

// Closed form of v' = 0.8 v + won from rest: the way after n ticks is won / 0.2 * (n - 4 * (1 -
// 0.8^n)). Source: docs/model.md, the numbers of motion [memory].
int ticks_in_water(double won) {
  int n = 1;
  while (won / 0.2 * (n - 4 * (1 - std::pow(0.8, n))) < 1) ++n;
  return n;
}

struct Way {
  model::Design design;
  Solved solved = settled(design);
  body::Surroundings here{solved.arrangement, solved.field, design.profiles[0]};
  body::RouteGraph graph = body::route_graph(here, body::entries(here, design.inlets[0].cells),
                                             body::outlet_cells(design));
};

// Ways of pushes alone: every position at one cell, so that each step takes as long.
body::RouteGraph pushes(model::Cell cell, std::uint32_t size, std::vector<HandStep> const& steps,
                        std::map<std::uint32_t, model::OutletId> const& outlets) {
  auto graph = hand_graph(size, steps, outlets);
  for (auto& position : graph.positions) position.feet = cell;
  return graph;
}

}  // namespace

TEST_CASE("travel: a straight run takes a push from standstill for each cell") {
  Way const way{draw({{"XXXXXXXX"}, {"wi....A."}, {"........"}})};
  CHECK(body::longest_trip(way.here, way.graph) == 5 * ticks_in_water(0.014));
}

TEST_CASE("travel: falling one cell from standstill takes five ticks") {
  Way const way{draw({{"A"}, {"i"}, {"."}, {"."}})};
  CHECK(body::longest_trip(way.here, way.graph) == 5);
}

TEST_CASE("travel: rising takes the mean stroke less gravity") {
  auto design = draw({{"X"}, {"s"}, {"w"}, {"A"}, {"."}});
  design.inlets = {{{design.grid.cell({0, 0, 2})}}};
  design.outlets = {{{design.grid.cell({0, 0, 3})}}};
  design.profiles[0].height = 1;
  Way lifted{design};
  CHECK(body::ticks_of(lifted.here, {design.grid.cell({0, 0, 2})}, {design.grid.cell({0, 0, 3})},
                       body::MoveRule::rise) == ticks_in_water(0.04 * 0.8 - 0.02));
}

TEST_CASE("travel: a loop has no bound") {
  Way const way{draw({{"XXXXXXXXX"}, {"wi.....wA"}, {".......X."}})};
  REQUIRE_FALSE(way.graph.steps.empty());
  CHECK_FALSE(body::longest_trip(way.here, way.graph));
}

TEST_CASE("travel: of two ways to an outlet the quicker and the longer are told") {
  Poured const poured(
      {{"XXX", "XXX", "XXX", "XXX"}, {"76A", "6XX", "5XX", "AXX"}, {"...", "...", "...", "..."}});
  auto const here = poured.here();
  auto const graph = body::route_graph(here, body::entries(here, {poured.at({0, 0, 1})}),
                                       body::outlet_cells(poured.design));
  auto const slanting = ticks_in_water(0.014 / std::sqrt(2.0)), along = ticks_in_water(0.014);
  CHECK(body::quickest_trip(here, graph, 0) == slanting + along);
  CHECK(body::longest_trip(here, graph, 0) == slanting + 2 * along);
  CHECK_FALSE(body::quickest_trip(here, graph, 1));
  CHECK_FALSE(body::longest_trip(here, graph, 1));
}

TEST_CASE("travel: a diagonal current takes a body to each side by its share") {
  Poured const poured({{"XX", "XX"}, {"76", "4X"}, {"..", ".."}});  // a slope of 1 east, 3 south
  auto const ticks = [&](model::Place to) {
    return body::ticks_of(poured.here(), {poured.at({0, 0, 1})}, {poured.at(to)},
                          body::MoveRule::push);
  };
  CHECK(ticks({1, 0, 1}) == ticks_in_water(0.014 / std::sqrt(10.0)));
  CHECK(ticks({0, 1, 1}) == ticks_in_water(0.014 * 3 / std::sqrt(10.0)));
}

TEST_CASE("travel: a loop has no longest way, unless it does not lead to the outlet") {
  Poured const poured({{"XXX"}, {"76."}, {"..."}});
  auto const here = poured.here();
  auto const cell = poured.at({0, 0, 1});
  auto const along = ticks_in_water(0.014);
  auto const aside = pushes(cell, 4, {{0, 1}, {0, 2}, {2, 3}, {3, 2}}, {{1, 0}});
  CHECK_FALSE(body::longest_trip(here, aside));
  CHECK(body::longest_trip(here, aside, 0) == along);
  CHECK(body::quickest_trip(here, aside, 0) == along);
  auto const on_the_way = pushes(cell, 3, {{0, 1}, {1, 0}, {1, 2}}, {{2, 0}});
  CHECK_FALSE(body::longest_trip(here, on_the_way, 0));
  CHECK(body::quickest_trip(here, on_the_way, 0) == 2 * along);
}

TEST_CASE("travel: a trip to an outlet where the body enters takes no time") {
  Poured const poured({{"XA"}, {"7."}, {".."}});
  auto const graph = pushes(poured.at({0, 0, 1}), 1, {}, {{0, 0}});
  CHECK(body::quickest_trip(poured.here(), graph, 0) == 0);
  CHECK(body::longest_trip(poured.here(), graph, 0) == 0);
}

TEST_CASE("travel: under water each cell is sunk, out of the air the first is fallen") {
  Poured const poured({{"X"}, {"S"}, {"S"}, {"."}, {"."}, {"."}});
  auto const sunk = ticks_in_water(0.02);
  auto const ticks = [&](int from, int to) {
    return body::ticks_of(poured.here(), {poured.at({0, 0, from})}, {poured.at({0, 0, to})},
                          body::MoveRule::sink);
  };
  CHECK(ticks(3, 1) == 5 + sunk);
  CHECK(ticks(2, 1) == sunk);
}

// The standard push, stroke and sinking, less a fifth each tick; then one of them stronger than the
// others in turn.
TEST_CASE("pace: the fastest that water takes a body") {
  using model::Rule;
  auto const fastest = [](std::vector<std::pair<Rule, int>> const& set) {
    model::Practice practice;
    for (auto const& [rule, value] : set) practice.set(rule, value);
    return body::fastest_in_water(practice);
  };
  CHECK(fastest({}) == Approx(0.1));
  CHECK(fastest({{Rule::water_push, 100}}) == Approx(0.5));
  CHECK(fastest({{Rule::upward_stroke, 80}}) == Approx(0.3));
  CHECK(fastest({{Rule::water_gravity, 60}}) == Approx(0.3));
  CHECK(fastest({{Rule::water_drag, 990}}) == Approx(2));
}
