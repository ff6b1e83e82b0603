#include "engine/tables/route_groups.hpp"

#include <random>

#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using body::Verdict;

namespace {

std::vector<tables::RouteGroup> groups_of(Surveyed const& surveyed,
                                          tables::RouteTable const& routes) {
  return tables::route_groups(surveyed.combinations, routes, 0, 0);
}

}  // namespace

TEST_CASE("a group: rows with the same route in everything, trapped cells and doubts included") {
  Surveyed const surveyed(draw({{"ac"}}));
  tables::RouteTable routes(4, 1, 1);
  for (std::size_t s = 0; s < 4; ++s) routes.at(s, 0, 0) = {Verdict::lost, {}, {3}, false, false};
  CHECK(groups_of(surveyed, routes).size() == 1);
  routes.at(1, 0, 0).trapped = {4};
  CHECK(groups_of(surveyed, routes).size() == 2);
  routes.at(2, 0, 0).spills = true;
  CHECK(groups_of(surveyed, routes).size() == 3);
  routes.at(3, 0, 0).is_unsure = true;
  CHECK(groups_of(surveyed, routes).size() == 4);
  CHECK(tables::destinations(surveyed.combinations, routes, 0, 0).size() == 1);
}

TEST_CASE("groups come in the order of their first row, with one of their situations") {
  Surveyed const surveyed(draw({{"ac"}}));
  tables::RouteTable routes(4, 1, 1);
  for (std::size_t s : {0u, 3u}) routes.at(s, 0, 0) = {Verdict::certain, {1}, {}, false, false};
  for (std::size_t s : {1u, 2u}) routes.at(s, 0, 0) = {Verdict::certain, {0}, {}, false, false};
  auto const groups = groups_of(surveyed, routes);
  REQUIRE(groups.size() == 2);
  CHECK(groups[0].rows.contains(0));
  CHECK(groups[0].rows.contains(3));
  CHECK(groups[0].rows.count() == 2);
  CHECK(routes.at(groups[0].situation, 0, 0) == routes.at(0, 0, 0));
  CHECK(routes.at(groups[1].situation, 0, 0) == routes.at(1, 0, 0));
  CHECK(groups[1].condition.size() == 2);  // one of the two levers, not both
}

TEST_CASE("conditions of groups are free where no row is reachable, and exclude each other") {
  auto design = draw({{"ac"}});
  add(design, {model::SignalKind::latch, false, 0, 1, 0});
  Surveyed const surveyed(design);
  tables::RouteTable routes(surveyed.combinations.situations.size(), 1, 1);
  for (std::uint32_t s = 0; s < surveyed.combinations.situations.size(); ++s)
    routes.at(s, 0, 0) = {Verdict::lost, {}, {s}, false, false};
  auto const groups = groups_of(surveyed, routes);
  REQUIRE(groups.size() == 4);
  logic::RowSet once(3), rows(3);
  for (auto const& group : groups) {
    auto const stated = logic::rows_of(group.condition, 3);
    CHECK((stated & surveyed.combinations.reachable) == group.rows);
    CHECK((stated & once).is_empty());
    once |= stated;
    rows |= group.rows;
  }
  CHECK(rows == surveyed.combinations.reachable);
  CHECK_FALSE(once == rows);  // some freedom was used
}

TEST_CASE("law: groups are as fine as the routes, and hold every reachable row once") {
  int with_several = 0;
  for (unsigned seed = 0; seed < 100; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design);
    auto const& combinations = judgement.combinations;
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      auto const groups = tables::route_groups(combinations, judgement.routes, inlet, 2);
      with_several += groups.size() > 1 ? 1 : 0;
      for (logic::Row row = 0; row < combinations.situation_of_row.size(); ++row) {
        int holding = 0;
        auto const& own = judgement.routes.at(combinations.situation_of_row[row], inlet, 2);
        for (auto const& group : groups) {
          bool const is_same = judgement.routes.at(group.situation, inlet, 2) == own;
          INFO("seed " << seed << ", row " << row);
          REQUIRE(group.rows.contains(row) == is_same);
          holding += group.rows.contains(row) ? 1 : 0;
        }
        REQUIRE(holding == 1);
      }
    }
  }
  CHECK(with_several > 10);
}

TEST_CASE("law: whatever is reached, conditions of groups hold their rows and exclude each other") {
  std::mt19937 dice(18);
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
          Verdict::lost, {}, {static_cast<unsigned>(dice() % 3)}, false, false};
    }
    logic::RowSet once(4);
    for (auto const& group : tables::route_groups(combinations, routes, 0, 0)) {
      auto const stated = logic::rows_of(group.condition, 4);
      INFO("trial " << trial);
      REQUIRE((stated & combinations.reachable) == group.rows);
      REQUIRE((stated & once).is_empty());
      once |= stated;
    }
  }
}
