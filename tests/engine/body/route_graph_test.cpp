#include "engine/body/route_graph.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/hand_graph.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {
body::RouteGraph routes(Poured const& poured, std::vector<model::Place> const& entries) {
  std::vector<model::Cell> cells;
  for (auto place : entries) cells.push_back(poured.at(place));
  return body::route_graph(poured.here(), body::entries(poured.here(), cells),
                           body::outlet_cells(poured.design));
}
}  // namespace

TEST_CASE("the route graph holds every position reached, breadth first, with its steps") {
  Poured const poured({{"XXXX"}, {"765A"}, {"...."}});
  auto const graph = routes(poured, {{0, 0, 1}});
  REQUIRE(graph.size() == 4);
  for (std::uint32_t i = 0; i < 4; ++i) {
    CHECK(graph.positions[i] ==
          body::Position{poured.at({static_cast<int>(i), 0, 1}), model::Side::none, 0});
    CHECK(graph.first_step[i + 1] - graph.first_step[i] == (i < 3 ? 1u : 0u));
  }
  CHECK(graph.starts == std::vector<std::uint32_t>{0});
  CHECK(graph.ends ==
        std::vector{body::End::none, body::End::none, body::End::none, body::End::outlet});
  CHECK(graph.outlets[3] == 0);
  CHECK(graph.outlets[0] == body::no_outlet);
}

TEST_CASE("an outlet ends the way, though the water goes on") {
  Poured poured({{"XXXX"}, {"765."}, {"...."}});
  poured.design.outlets = {{{poured.at({1, 0, 1})}}};
  auto const graph = routes(poured, {{0, 0, 1}});
  CHECK(graph.size() == 2);
  CHECK(graph.ends[1] == body::End::outlet);
}

TEST_CASE("one feet cell reached with two memories is two positions") {
  Poured const poured({{"XXX"}, {"..."}, {"..."}, {"XX."}, {"76."}, {"..."}});
  auto const graph = routes(poured, {{0, 0, 4}, {2, 0, 3}});
  std::vector<body::Position> at_edge;
  for (auto const& position : graph.positions) {
    if (position.feet == poured.at({2, 0, 3})) at_edge.push_back(position);
  }
  REQUIRE(at_edge.size() == 2);
  CHECK(at_edge[0].carried_to == model::Side::none);
  CHECK(at_edge[1].carried_to == model::Side::east);
  CHECK(at_edge[1].fallen == 1);
}

TEST_CASE("a body starts where it fits, at every cell of the inlet") {
  Poured const poured({{"XXX"}, {"..."}, {"X.."}});
  auto const graph = routes(poured, {{0, 0, 1}, {1, 0, 1}, {2, 0, 1}});
  CHECK(graph.starts.size() == 2);
  CHECK(routes(poured, {{0, 0, 1}}).size() == 0);
}

TEST_CASE("what leaves an open drawing is a spill") {
  Poured poured({{"XX"}, {"76"}, {".."}, {".."}});
  open_the_outside(poured.design);
  poured.arrangement = {poured.design, std::vector<bool>(poured.design.fills.size(), false)};
  auto const graph = routes(poured, {{0, 0, 1}});
  REQUIRE(graph.size() == 3);
  CHECK(graph.ends[2] == body::End::spill);
  CHECK(graph.positions[2].feet == poured.at({2, 0, 1}));
  Poured bottomless({{".."}, {".."}});
  open_the_outside(bottomless.design);
  bottomless.arrangement = {bottomless.design,
                            std::vector<bool>(bottomless.design.fills.size(), false)};
  CHECK(routes(bottomless, {{0, 0, 0}}).ends.back() == body::End::spill);
}

TEST_CASE("what leads to a goal: every position from which steps end there") {
  auto const graph = hand_graph(6, {{0, 1}, {1, 2}, {1, 3}, {3, 4}, {4, 3}}, {{2, 7}, {5, 8}});
  CHECK(body::positions_at(graph, 7) == std::vector<std::uint32_t>{2});
  CHECK(body::positions_at(graph, body::no_outlet).empty());
  CHECK(body::leading_to(graph, {2}) == std::vector{true, true, true, false, false, false});
  CHECK(body::leading_to(graph, {4}) == std::vector{true, true, false, true, true, false});
  CHECK(body::leading_to(graph, {}) == std::vector<bool>(6, false));
}
