#include "engine/body/endings.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/hand_graph.hpp"

using namespace leat::body;
using leat::drawn::hand_graph;

TEST_CASE("every ending once, by kind, with a shortest trail") {
  auto const graph = hand_graph(8, {{0, 1}, {0, 2}, {0, 3}, {3, 4}, {0, 5}, {5, 6}, {6, 5}, {1, 7}},
                                {{2, 1}, {7, 0}}, {{4, End::spill}});
  auto const all = endings(graph);
  REQUIRE(all.size() == 4);
  CHECK(all[0].kind == EndingKind::outlet);
  CHECK(all[0].outlet == 0);
  CHECK(all[0].trail.positions == std::vector<std::uint32_t>{0, 1, 7});
  CHECK(all[1].outlet == 1);
  CHECK(all[2].kind == EndingKind::spill);
  CHECK(all[2].trail.positions.back() == 4);
  CHECK(all[3].kind == EndingKind::loop);
  CHECK(all[3].loop == std::vector<leat::model::Cell>{5, 6});
}

TEST_CASE("rests are told apart by their feet cell and keep their reason") {
  auto const graph = hand_graph(3, {{0, 1}, {0, 2}}, {}, {{1, End::still}, {2, End::pinned}});
  auto const all = endings(graph);
  REQUIRE(all.size() == 2);
  CHECK(all[0].end == End::still);
  CHECK(all[1].end == End::pinned);
}
