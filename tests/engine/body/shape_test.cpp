#include "engine/body/shape.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/hand_graph.hpp"

using namespace leat::body;
using leat::drawn::hand_graph;
using Loops = std::vector<std::vector<std::uint32_t>>;

TEST_CASE("strong components: those that reach each other, and no others") {
  auto const graph = hand_graph(6, {{0, 1}, {1, 2}, {2, 1}, {2, 3}, {3, 4}, {4, 3}, {0, 5}});
  auto const components = strong_components(graph);
  auto const& of = components.component_of;
  CHECK(components.count == 4);
  CHECK(of[1] == of[2]);
  CHECK(of[3] == of[4]);
  for (auto [a, b] : {std::pair{0, 1}, {1, 3}, {0, 5}, {3, 5}, {1, 5}}) {
    CHECK(of[static_cast<std::size_t>(a)] != of[static_cast<std::size_t>(b)]);
  }
}

TEST_CASE("closed loops: components with an inner step and no way out") {
  CHECK(closed_loops(hand_graph(3, {{0, 1}, {1, 2}, {2, 1}})) == Loops{{1, 2}});
  CHECK(closed_loops(hand_graph(3, {{0, 1}, {1, 0}, {1, 2}})).empty());
  CHECK(closed_loops(hand_graph(2, {{0, 1}})).empty());
  CHECK(closed_loops(hand_graph(2, {{0, 1}, {1, 1}})) == Loops{{1}});
  CHECK(closed_loops(hand_graph(5, {{0, 1}, {1, 1}, {0, 2}, {2, 3}, {3, 4}, {4, 2}})).size() == 2);
}

TEST_CASE("dominators: of a diamond the top, of a chain the one before") {
  auto const diamond = hand_graph(5, {{0, 1}, {0, 2}, {1, 3}, {2, 3}, {3, 4}});
  CHECK(immediate_dominators(diamond) == std::vector<std::uint32_t>{at_root, 0, 0, 0, 3});
}

TEST_CASE("dominators: a way round takes a choke point away, a loop back does not") {
  auto const round = hand_graph(4, {{0, 1}, {1, 2}, {2, 3}, {0, 3}});
  CHECK(immediate_dominators(round) == std::vector<std::uint32_t>{at_root, 0, 1, 0});
  auto const back = hand_graph(4, {{0, 1}, {1, 2}, {2, 0}, {2, 3}});
  CHECK(immediate_dominators(back) == std::vector<std::uint32_t>{at_root, 0, 1, 2});
}

TEST_CASE("dominators: several starts hang from one root") {
  auto const graph = hand_graph(3, {{0, 2}, {1, 2}}, {}, {}, {0, 1});
  CHECK(immediate_dominators(graph) == std::vector<std::uint32_t>{at_root, at_root, at_root});
}

TEST_CASE("the shape of nothing is nothing") {
  RouteGraph const empty{{}, {}, {}, {0}, {}, {}};
  CHECK(strong_components(empty).count == 0);
  CHECK(closed_loops(empty).empty());
  CHECK(immediate_dominators(empty).empty());
}
