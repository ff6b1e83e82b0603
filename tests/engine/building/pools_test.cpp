#include "engine/building/pools.hpp"

#include "engine/water/settle.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;

namespace {

building::Pools pools(model::Design const& design) {
  return building::pools_of(drawn::settled(design).arrangement);
}

}  // namespace

TEST_CASE("a source waits for the level it runs on") {
  auto const design = drawn::draw({{"w........."}});
  auto const found = pools(design);
  REQUIRE(found.pools.size() == 1);
  CHECK(found.is_each_tried);
  auto const& pool = found.pools.front();
  CHECK(pool.sources == std::vector<model::Cell>{design.grid.cell({0, 0, 0})});
  CHECK(pool.wet.size() == 8);  // its reach on a floor: common practice, no source
  CHECK(pool.highest == 0);
  CHECK(pool.holders.empty());
  // Eight below, eight to the north, eight to the south, one to the west.
  CHECK(pool.around == 25);
}

TEST_CASE("a source over a sign waits for its own level, and those above may come first or later") {
  auto const design = drawn::draw({{"XsXX", "XXXX"}, {"XwXX", "XXXX"}, {"XXXX", "XXXX"}});
  auto const found = pools(design);
  REQUIRE(found.pools.size() == 1);
  CHECK(found.pools.front().highest == 1);
  auto const& holders = found.pools.front().holders;
  auto const holds = [&](model::Place at) {
    return std::binary_search(holders.begin(), holders.end(), design.grid.cell(at));
  };
  CHECK(holds({1, 0, 0}));
  CHECK(holds({0, 0, 1}));
  CHECK_FALSE(holds({1, 0, 2}));
}

TEST_CASE("waters that touch are let in together, others by themselves and the lowest first") {
  auto const design = drawn::draw({{"w..X", "XXXX", "XXXX"}, {"XXXX", "XXXX", "w.wX"}});
  auto const found = pools(design);
  REQUIRE(found.pools.size() == 2);
  CHECK(found.pools[0].highest == 0);
  CHECK(found.pools[0].sources.size() == 1);
  CHECK(found.pools[1].highest == 1);
  CHECK(found.pools[1].sources.size() == 2);
}

// Over the hole at column 3 lies a source that is placed later: until then the first one runs
// there.
TEST_CASE("water that runs elsewhere while sources are missing is counted in") {
  auto const design = drawn::draw({{"XXX.X"}, {"w..wX"}});
  auto const full = water::settle_fresh(drawn::settled(design).arrangement).field;
  auto const found = pools(design);
  std::size_t at_end = 0, counted = 0;
  for (auto state : full) at_end += water::is_wet(state) ? 1 : 0;
  for (auto const& pool : found.pools) counted += pool.wet.size();
  CHECK(counted >= at_end);
  auto const coarse = building::pools_of(drawn::settled(design).arrangement, 0);
  CHECK_FALSE(coarse.is_each_tried);
}

// What a builder relies on: with everything up to the level placed, and nothing above it but air,
// the water of a pool stays in the cells that are told.
TEST_CASE("water let in when its level stands keeps within its pool") {
  auto const design = drawn::draw(
      {{"w....X", "XXXX.X"}, {"XXXXXX", "XXXX.X"}, {"w.....", "XXXX.."}, {"......", "XXXX.."}});
  for (auto const& pool : pools(design).pools) {
    auto half_built = design;
    auto const air = static_cast<model::FillId>(half_built.fills.size());
    half_built.fills.push_back({model::material::open, model::material::open, {}});
    for (model::Cell c = 0; c < half_built.fill_of.size(); ++c) {
      auto const at = design.grid.place(c);
      bool const is_other_source =
          design.materials[design.fills[design.fill_of[c]].powered].is_source &&
          !std::binary_search(pool.sources.begin(), pool.sources.end(), c);
      if (design.grid.is_inside(at) && (at.z > pool.highest || is_other_source))
        half_built.fill_of[c] = air;
    }
    auto const field = water::settle_fresh(drawn::settled(half_built).arrangement).field;
    for (model::Cell c = 0; c < field.size(); ++c) {
      if (water::is_wet(field[c])) CHECK(std::binary_search(pool.wet.begin(), pool.wet.end(), c));
    }
  }
}
