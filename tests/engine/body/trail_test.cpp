#include "engine/body/trail.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/hand_graph.hpp"

using namespace leat::body;
using leat::drawn::hand_graph;

TEST_CASE("the shortest trail to a goal, with the steps taken") {
  auto const graph = hand_graph(5, {{0, 1}, {1, 2}, {2, 4}, {0, 3}, {3, 4}});
  auto const trail = shortest_trail(graph, [](auto i) { return i == 4; });
  REQUIRE(trail);
  CHECK(trail->positions == std::vector<std::uint32_t>{0, 3, 4});
  REQUIRE(trail->steps.size() == 2);
  CHECK(graph.steps[trail->steps[0]].to == 3);
  CHECK(graph.steps[trail->steps[1]].to == 4);
}

TEST_CASE("the shortest trail begins at the nearest start, and may be no step long") {
  auto const graph = hand_graph(4, {{0, 1}, {1, 2}, {3, 2}}, {}, {}, {0, 3});
  auto const trail = shortest_trail(graph, [](auto i) { return i == 2; });
  CHECK(trail->positions == std::vector<std::uint32_t>{3, 2});
  CHECK(shortest_trail(graph, [](auto i) { return i == 0; })->steps.empty());
}

TEST_CASE("no trail to what is not reached") {
  CHECK_FALSE(shortest_trail(hand_graph(3, {{0, 1}}), [](auto i) { return i == 2; }));
}
