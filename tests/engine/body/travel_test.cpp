#include "engine/body/travel.hpp"

#include <cmath>

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

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
