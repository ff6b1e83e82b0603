#include "engine/water/holes.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {
int distance(Poured const& poured, model::Place from) {
  return water::hole_distance(poured.now(), poured.at(from));
}
}  // namespace

TEST_CASE(
    "D counts side steps to the nearest cell with a hole below, from 0 to 4, and no further") {
  Poured const poured({{"XXXXXXX.XXX"}, {"..........."}});
  for (int d = 0; d <= 4; ++d) CHECK(distance(poured, {7 - d, 0, 1}) == d);
  CHECK(distance(poured, {2, 0, 1}) == water::no_hole);
}

TEST_CASE("D of the nearer of two holes") {
  Poured const poured({{".XXXX.X"}, {"......."}});
  CHECK(distance(poured, {2, 0, 1}) == 2);
  CHECK(distance(poured, {3, 0, 1}) == 2);
  CHECK(distance(poured, {1, 0, 1}) == 1);
}

TEST_CASE("D goes round walls, and not through what water may not enter") {
  Poured const around({{"XXX.X", "XXXXX"}, {"..X..", "....."}});
  CHECK(distance(around, {1, 0, 1}) == 4);
  Poured const shut({{"XXX.X"}, {"..s.."}});
  CHECK(distance(shut, {1, 0, 1}) == water::no_hole);
}

TEST_CASE("a source stops D, other water does not") {
  Poured const source({{"XXX.X"}, {"..S.."}});
  CHECK(distance(source, {1, 0, 1}) == water::no_hole);
  Poured const flow({{"XXX.X"}, {"..7.."}});
  CHECK(distance(flow, {1, 0, 1}) == 2);
}

TEST_CASE("a hole filled with water is a hole, a sign or rock below is none") {
  Poured const poured({{"XSXXXXXXsX"}, {".........."}});
  CHECK(distance(poured, {1, 0, 1}) == 0);
  CHECK(distance(poured, {3, 0, 1}) == 2);
  CHECK(distance(poured, {8, 0, 1}) == water::no_hole);
}

TEST_CASE("how far D looks is a constant of the design") {
  Poured poured({{"XXXXXXX.XXX"}, {"..........."}});
  poured.practise(model::Rule::hole_search, 6);
  CHECK(distance(poured, {1, 0, 1}) == 6);
  poured.practise(model::Rule::hole_search, 0);
  CHECK(distance(poured, {7, 0, 1}) == 0);
  CHECK(distance(poured, {6, 0, 1}) == water::no_hole);
}

TEST_CASE("the open outside is all hole") {
  Poured poured({{"XXXXX"}, {"....."}});
  open_the_outside(poured.design);
  poured.arrangement = {poured.design, std::vector<bool>(poured.design.fills.size(), false)};
  CHECK(distance(poured, {2, 0, 1}) == 1);  // one row: north and south of it is outside
}

TEST_CASE("D grows as sources close one way to a hole after the other") {
  Poured poured({{"XXXXXXX", "XXX.XXX", "XXXXXXX"}, {".......", "...X...", "......."}});
  poured.practise(model::Rule::hole_search, 8);
  poured.design.fill_of[poured.at({3, 1, 1})] = poured.design.fill_of[poured.at({0, 0, 1})];
  CHECK(distance(poured, {1, 1, 1}) == 2);
  poured.field[poured.at({2, 1, 1})] = water::source;
  CHECK(distance(poured, {1, 1, 1}) == 4);
  poured.field[poured.at({2, 0, 1})] = water::source;
  CHECK(distance(poured, {1, 1, 1}) == 4);
  poured.field[poured.at({2, 2, 1})] = water::source;
  CHECK(distance(poured, {1, 1, 1}) == water::no_hole);
}

TEST_CASE("D at the widest search there is, on an open floor with no hole") {
  std::string const rock(19, 'X'), open(19, '.');
  Poured poured({Level(19, rock), Level(19, open)});
  poured.practise(model::Rule::hole_search, 8);
  CHECK(distance(poured, {9, 9, 1}) == water::no_hole);
  poured.design.fill_of[poured.at({17, 9, 0})] = poured.design.fill_of[poured.at({9, 9, 1})];
  CHECK(distance(poured, {9, 9, 1}) == 8);
}
