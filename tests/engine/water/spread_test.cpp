#include "engine/water/spread.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Side;

namespace {

// Whether the middle cell of three by three spreads, `water` being in it and `below` under it.
bool spreads(char water, char below, Level sides = {"X.X", "...", "X.X"}) {
  sides[1][1] = water;
  Poured const poured({{"XXX", std::string{'X', below, 'X'}, "XXX"}, sides});
  return water::spreads_sideways(poured.now(), poured.at({1, 1, 1}));
}

// The sides that the cell marked by its place is offered to, as letters in the order e s w n.
std::string offered_by(Poured const& poured, model::Place n) {
  std::string letters;
  for (auto side : model::sides) {
    if (water::offers(poured.now(), poured.at(n), side)) letters += side_name(side)[0];
  }
  return letters;
}

}  // namespace

TEST_CASE("a source spreads unless it is still being poured out below") {
  CHECK(spreads('S', 'X'));
  CHECK(spreads('S', 's'));
  CHECK(spreads('S', 'S'));
  CHECK(spreads('S', 'F'));
  CHECK(spreads('S', '3'));
  CHECK_FALSE(spreads('S', '.'));
  CHECK_FALSE(spreads('S', 'g'));
}

TEST_CASE("a source with three source neighbours spreads though it pours") {
  CHECK(spreads('S', '.', {"XSX", "S.S", "X.X"}));
  CHECK(spreads('S', '.', {"XSX", "S.S", "XSX"}));
  CHECK_FALSE(spreads('S', '.', {"X.X", "S.S", "X.X"}));
  CHECK_FALSE(spreads('F', '.', {"XSX", "S.S", "X.X"}));
}

TEST_CASE("flowing and falling water spreads only where water may not enter below") {
  for (char water : {'7', '2', 'F'}) {
    CHECK(spreads(water, 'X'));
    CHECK(spreads(water, 's'));
    CHECK_FALSE(spreads(water, '.'));
    CHECK_FALSE(spreads(water, 'F'));
    CHECK_FALSE(spreads(water, 'S'));
    CHECK_FALSE(spreads(water, '4'));
    CHECK_FALSE(spreads(water, 'g'));
  }
}

TEST_CASE("without a hole near every side is offered that water may enter and no source holds") {
  Poured const poured({{"XXXXX", "XXXXX", "XXXXX"}, {"XX.XX", ".S7s.", "XX.XX"}});
  CHECK(offered_by(poured, {2, 1, 1}) == "sn");
}

TEST_CASE("preferred sides: those with the least D") {
  // A hole two steps to the east of the source's east side, three to the west of its west side.
  Poured const poured({{"X.XXXXXX.XX"}, {".....S....."}});
  CHECK(offered_by(poured, {5, 0, 1}) == "e");
}

TEST_CASE("preferred sides: all that share the least D") {
  Poured const poured({{"XXX.XXXXX.XXX"}, {"......S......"}});
  CHECK(offered_by(poured, {6, 0, 1}) == "ew");
}

TEST_CASE("preferred sides: a side whose hole is within four steps wins over one without") {
  Poured const four({{"XXXXXXXXXX.XX"}, {".....S......."}});
  CHECK(offered_by(four, {5, 0, 1}) == "e");
  Poured const five({{"XXXXXXXXXXX.X"}, {".....S......."}});
  CHECK(offered_by(five, {5, 0, 1}) == "ew");
}

TEST_CASE("preferred sides: a side that holds a flow is one, and its D counts") {
  Poured const poured({{"X.XXXXX"}, {"..7S..."}});
  CHECK(offered_by(poured, {3, 0, 1}) == "w");
}

TEST_CASE("nothing is offered by water that does not spread, nor over the wall") {
  Poured const poured({{"X.X"}, {"S7."}});
  CHECK(offered_by(poured, {1, 0, 1}).empty());
  CHECK(offered_by(poured, {0, 0, 1}) == "e");
}

TEST_CASE("in an open drawing water leaves sideways by an offer, or down") {
  auto const spilling = [](std::vector<Level> const& levels, model::Place place) {
    Poured poured(levels);
    open_the_outside(poured.design);
    poured.arrangement = {poured.design, std::vector<bool>(poured.design.fills.size(), false)};
    return water::spills(poured.now(), poured.at(place));
  };
  CHECK(spilling({{"XXX"}, {"6.."}}, {0, 0, 1}));
  CHECK(spilling({{"7.."}}, {0, 0, 0}));
  CHECK_FALSE(spilling({{"XXXXX", "XXXXX", "XXXXX"}, {"XXXXX", "X.6.X", "XXXXX"}}, {2, 1, 1}));
  CHECK_FALSE(spilling({{"XXX"}, {"1.."}}, {0, 0, 1}));  // too weak to go on
  Poured const closed({{"XXX"}, {"6.."}});
  CHECK_FALSE(water::spills(closed.now(), closed.at({0, 0, 1})));
}
