#include "engine/tables/routes.hpp"

#include <random>

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using body::Verdict;
using tables::Route;
using Outlets = std::vector<model::OutletId>;

namespace {

// A run that lever 0 shuts: on to A, or dry before the block.
model::Design gated() { return draw({{"XXXXXX"}, {"wi.aA."}, {"....aX"}}); }

// Both orders, which must agree.
Route union_of(Route const& a, Route const& b) {
  auto const route = tables::united(a, b);
  CHECK(route == tables::united(b, a));
  return route;
}

Route const to_a{Verdict::certain, {0}, {}, false, false};
Route const to_b{Verdict::certain, {1}, {}, false, false};
Route const held{Verdict::lost, {}, {5, 7}, false, false};
Route const leaving{Verdict::lost, {}, {}, true, false};

}  // namespace

TEST_CASE("the table keeps one route for each situation, inlet and profile") {
  tables::RouteTable table(2, 3, 4);
  unsigned number = 0;
  auto const each = [&](auto visit) {
    for (std::size_t s = 0; s < 2; ++s) {
      for (model::InletId i = 0; i < 3; ++i) {
        for (model::ProfileId p = 0; p < 4; ++p) visit(table.at(s, i, p));
      }
    }
  };
  each([&](auto& route) { route.outlets = {number++}; });
  number = 0;
  each([&](auto& route) { CHECK(route.outlets == Outlets{number++}); });
}

TEST_CASE("destinations gather the rows with the same verdict and outlets, with their condition") {
  auto const judgement = judge(gated());
  auto const all = tables::destinations(judgement.combinations, judgement.routes, 0, 0);
  REQUIRE(all.size() == 2);
  CHECK(all[0].verdict == Verdict::certain);
  CHECK(all[0].outlets == Outlets{0});
  CHECK(all[0].rows == ~logic::RowSet::where_on(2, 0));
  CHECK(all[0].condition == std::vector{logic::Cube{1, 0}});
  CHECK(all[1].verdict == Verdict::lost);
  CHECK(all[1].condition == std::vector{logic::Cube{1, 1}});
}

TEST_CASE("the same outlets with another verdict are another destination") {
  Surveyed const surveyed(draw({{"a"}}));
  auto const& combinations = surveyed.combinations;
  tables::RouteTable routes(2, 1, 1);
  routes.at(0, 0, 0) = {Verdict::certain, {0}, {}, false, false};
  routes.at(1, 0, 0) = {Verdict::doubtful, {0}, {}, true, false};
  CHECK(tables::destinations(combinations, routes, 0, 0).size() == 2);
  routes.at(1, 0, 0) = routes.at(0, 0, 0);
  CHECK(tables::destinations(combinations, routes, 0, 0).size() == 1);
}

TEST_CASE("a route tells where the body is trapped") {
  auto const judgement = judge(gated());
  auto const& shut = route(judgement, true);
  auto const& grid = gated().grid;
  CHECK(shut.trapped == std::vector{grid.cell({1, 0, 1}), grid.cell({2, 0, 1})});
  CHECK(route(judgement, false).trapped.empty());
}

TEST_CASE("united: certain only where both are, of the same outlet") {
  CHECK(union_of(to_a, to_a) == to_a);
  CHECK(union_of(to_a, to_b) == Route{Verdict::split, {0, 1}, {}, false, false});
  CHECK(union_of(held, held) == held);
}

TEST_CASE("united: what is lost in one water is doubtful with what arrives in another") {
  CHECK(union_of(to_a, held) == Route{Verdict::doubtful, {0}, {5, 7}, false, false});
  CHECK(union_of(to_a, leaving) == Route{Verdict::doubtful, {0}, {}, true, false});
  CHECK(union_of(held, leaving) == Route{Verdict::lost, {}, {5, 7}, true, false});
}

TEST_CASE("united: doubt stays, and outlets, cells and spills add up") {
  Route const doubtful{Verdict::doubtful, {0}, {7, 9}, false, true};
  CHECK(union_of(doubtful, to_a) == doubtful);
  CHECK(union_of(doubtful, held) == Route{Verdict::doubtful, {0}, {5, 7, 9}, false, true});
  Route const split{Verdict::split, {0, 2}, {}, false, false};
  CHECK(union_of(split, to_b) == Route{Verdict::split, {0, 1, 2}, {}, false, false});
  CHECK(union_of(split, to_a) == split);
  CHECK(union_of(split, held) == Route{Verdict::split, {0, 2}, {5, 7}, false, false});
}

TEST_CASE("by situation: the union over its waters, and a single water's own route") {
  Surveyed const surveyed(remembering());
  auto const by_water = surveyed.by_water();
  CHECK(by_water.at(0, 0, 0).verdict == Verdict::lost);
  CHECK(by_water.at(1, 0, 0).verdict == Verdict::certain);
  CHECK(by_water.at(2, 0, 0).verdict == Verdict::certain);
  auto const routes = surveyed.by_situation();
  CHECK(routes.at(0, 0, 0) == union_of(by_water.at(0, 0, 0), by_water.at(2, 0, 0)));
  CHECK(routes.at(0, 0, 0).verdict == Verdict::doubtful);
  CHECK(routes.at(0, 0, 0).outlets == Outlets{0});
  CHECK(routes.at(1, 0, 0) == by_water.at(1, 0, 0));
  CHECK(judge(remembering()).routes.at(0, 0, 0) == routes.at(0, 0, 0));
}

TEST_CASE("conditions are free where no row is reachable, and exclude each other there too") {
  // Rows are lever 0, lever 1, latch; 011, 100 and 110 are never reached.
  auto design = draw({{"ac"}});
  add(design, {model::SignalKind::latch, false, 0, 1, 0});
  Surveyed const surveyed(design);
  auto const& combinations = surveyed.combinations;
  tables::RouteTable routes(combinations.situations.size(), 1, 1);
  for (std::uint32_t s = 0; s < combinations.situations.size(); ++s)
    routes.at(s, 0, 0) = s == combinations.situation_of_row[5] ? to_a : to_b;
  auto const all = tables::destinations(combinations, routes, 0, 0);
  REQUIRE(all.size() == 2);
  CHECK(all[0].outlets == Outlets{1});  // of row 0
  CHECK(all[1].rows.count() == 1);
  logic::RowSet once(3), rows(3);
  for (auto const& destination : all) {
    auto const stated = logic::rows_of(destination.condition, 3);
    CHECK((stated & combinations.reachable) == destination.rows);
    CHECK((stated & once).is_empty());
    once |= stated;
    rows |= destination.rows;
  }
  CHECK(rows == combinations.reachable);
  // Lever 0 without lever 1: the latch needs not be named.
  CHECK(all[1].condition == std::vector{logic::Cube{3, 1}});
}

TEST_CASE("law: whatever is reached, conditions hold their rows and exclude each other") {
  std::mt19937 dice(17);
  for (int trial = 0; trial < 200; ++trial) {
    explore::Combinations combinations;
    combinations.reachable = logic::RowSet(4);
    tables::RouteTable routes(16, 1, 1);
    for (logic::Row row = 0; row < 16; ++row) {
      bool const is_reached = dice() % 2 == 0;
      auto const number = static_cast<std::uint32_t>(combinations.situations.size());
      combinations.situation_of_row.push_back(is_reached ? number : explore::Combinations::never);
      if (!is_reached) continue;
      combinations.reachable.insert(row);
      combinations.situations.push_back({number});
      routes.at(number, 0, 0) = {
          Verdict::certain, {static_cast<unsigned>(dice() % 3)}, {}, false, false};
    }
    logic::RowSet once(4);
    for (auto const& destination : tables::destinations(combinations, routes, 0, 0)) {
      auto const stated = logic::rows_of(destination.condition, 4);
      INFO("trial " << trial);
      REQUIRE((stated & combinations.reachable) == destination.rows);
      REQUIRE((stated & once).is_empty());
      once |= stated;
    }
    REQUIRE((once & combinations.reachable) == combinations.reachable);
  }
}
