#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {
std::ptrdiff_t wet_columns(std::vector<Level> const& levels) {
  std::ptrdiff_t wet = 0;
  for (std::size_t x = 0; x < levels[0][0].size(); ++x) {
    bool const is_wet = std::any_of(levels.begin(), levels.end(), [&](Level const& level) {
      return level[0][x] != 'X' && level[0][x] != '.';
    });
    wet += is_wet ? 1 : 0;
  }
  return wet;
}
}  // namespace

// Common practice, no source: a source on the floor wets eight cells in a row, itself included.
TEST_CASE("practice: a source on the floor reaches eight cells") {
  auto const water = water_of({{"XXXXXXXXXXXX"}, {"w..........."}});
  CHECK(water[1] == Level{"S7654321...."});
  CHECK(wet_columns(water) == 8);
}

// Common practice, no source: a source on top of a sign, one cell above the floor, wets nine
// columns of the floor's row, its own included.
TEST_CASE("practice: a source on top of a sign reaches nine columns") {
  auto const water = water_of({{"XXXXXXXXXXXX"}, {"s..........."}, {"w..........."}});
  CHECK(water[2] == Level{"S7.........."});
  CHECK(water[1] == Level{"XF7654321..."});
  CHECK(wet_columns(water) == 9);
}

// Common practice, no source: what falls is as strong as a source again, so a step down renews a
// run.
TEST_CASE("practice: a step down renews the reach") {
  auto const water = water_of({{"XXXXXXXXXXXXXX"}, {"XXX..........."}, {"w............."}});
  CHECK(water[2] == Level{"S765.........."});
  CHECK(water[1] == Level{"XXXF7654321..."});
}

// From memory: two sources with one cell between them over solid ground make a third.
TEST_CASE("practice: two sources make a third") {
  CHECK(water_of({{"XXX"}, {"w.w"}})[1] == Level{"SSS"});
}

// From memory: water looks four side steps around for a hole.
TEST_CASE("practice: water seeks a hole four steps away, not five") {
  CHECK(water_of({{"XXXXXXXXXX.XX"}, {".....w......."}})[1][0][4] == '.');
  CHECK(water_of({{"XXXXXXXXXXX.X"}, {".....w......."}})[1][0][4] == '7');
}
