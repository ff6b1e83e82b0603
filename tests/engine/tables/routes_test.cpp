#include "engine/tables/routes.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using body::Verdict;

namespace {
// A run that lever 0 shuts: on to A, or dry before the block.
model::Design gated() { return draw({{"XXXXXX"}, {"wi.aA."}, {"....aX"}}); }
}  // namespace

TEST_CASE("the table keeps one route for each setting, inlet and profile") {
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
  each([&](auto& route) { CHECK(route.outlets == std::vector<model::OutletId>{number++}); });
}

TEST_CASE("destinations gather the rows with the same verdict and outlets, with their condition") {
  auto const judgement = judge(gated());
  auto const all = tables::destinations(judgement.combinations, judgement.routes, 0, 0);
  REQUIRE(all.size() == 2);
  CHECK(all[0].verdict == Verdict::certain);
  CHECK(all[0].outlets == std::vector<model::OutletId>{0});
  CHECK(all[0].rows == ~logic::RowSet::where_on(2, 0));
  CHECK(all[0].condition == std::vector{logic::Cube{1, 0}});
  CHECK(all[1].verdict == Verdict::lost);
  CHECK(all[1].condition == std::vector{logic::Cube{1, 1}});
}

TEST_CASE("the same outlets with another verdict are another destination") {
  auto const design = draw({{"a"}});
  auto const combinations = explore::combine(design, logic::Truth(design.circuit, {0, 1}));
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
