#include "engine/water/survey.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

TEST_CASE("a survey lists the wet cells with all that can be said of them") {
  Poured const poured({{"X.X"}, {"w7S"}});
  auto const wet = water::survey(poured.now());
  REQUIRE(wet.size() == 3);
  CHECK(wet[0].cell == poured.at({0, 0, 1}));
  CHECK(wet[0].is_placed);
  CHECK(wet[1].strength == 7);
  CHECK(wet[1].state == 7);
  CHECK(wet[1].current == water::Current{0, 0});
  CHECK_FALSE(wet[2].is_placed);
  CHECK(wet[2].state == water::source);
  CHECK(wet[2].strength == 8);
  CHECK(wet[2].current == water::Current{-1, 0});
  CHECK_FALSE(wet[1].spills);
}

TEST_CASE("a survey says where water leaves an open drawing") {
  Poured poured({{"XXX"}, {"X7X"}});
  open_the_outside(poured.design);
  poured.arrangement = {poured.design, std::vector<bool>(poured.design.fills.size(), false)};
  auto const wet = water::survey(poured.now());
  REQUIRE(wet.size() == 1);
  CHECK(wet[0].spills);
}
