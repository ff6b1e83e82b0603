#include "engine/water/intrinsic.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

// What the water makes of the middle cell of three levels with one row of three cells each; `north`
// replaces the rock to the north of it.
water::State middle(Level below, Level level, Level above = {"XXX"}) {
  auto const around = [](Level const& row) { return row.size() > 1 ? row : Level{"XXX", row[0]}; };
  Poured const poured({around(below), around(level), around(above)});
  return water::intrinsic(poured.now(), poured.at({1, 1, 1}));
}

}  // namespace

TEST_CASE("intrinsic 1: two source sides over rock, a sign or a source form a source") {
  CHECK(middle({"XXX"}, {"S.S"}) == water::source);
  CHECK(middle({"XsX"}, {"S.S"}) == water::source);
  CHECK(middle({"XSX"}, {"S.S"}) == water::source);
  CHECK(middle({"XwX"}, {"w.w"}) == water::source);
  CHECK(middle({"XXX", "XXX"}, {"XSX", "X.S"}) == water::source);
}

TEST_CASE("intrinsic 1: over what bears no sources none forms") {
  CHECK(middle({"X.X"}, {"S.S"}) == 7);
  CHECK(middle({"XFX"}, {"S.S"}) == 7);
  CHECK(middle({"X5X"}, {"S.S"}) == 7);
  CHECK(middle({"XgX"}, {"S.S"}) == 7);
  CHECK(middle({"XpX"}, {"S.S"}) == 7);
}

TEST_CASE("intrinsic 1: one source side, or other strong water, forms none") {
  CHECK(middle({"XXX"}, {"S.."}) == 7);
  CHECK(middle({"XXX"}, {"S.F"}) == 7);
  CHECK(middle({"XXX"}, {"F.F"}) == 7);
}

TEST_CASE("intrinsic 1 goes before 2: water from above does not keep a source from forming") {
  CHECK(middle({"XXX"}, {"S.S"}, {"XFX"}) == water::source);
}

TEST_CASE("intrinsic 2: under any wet cell water falls, however strong its sides") {
  for (char wet : {'S', 'F', '7', '1'}) {
    CHECK(middle({"XXX"}, {"S.."}, {std::string{'X', wet, 'X'}}) == water::falling);
    CHECK(middle({"X.X"}, {"..."}, {std::string{'X', wet, 'X'}}) == water::falling);
  }
}

TEST_CASE("intrinsic 3: one less than the strongest wet side, at least 1") {
  CHECK(middle({"XXX"}, {"7.3"}) == 6);
  CHECK(middle({"XXX"}, {"2.3"}) == 2);
  CHECK(middle({"XXX"}, {"F.3"}) == 7);
  CHECK(middle({"XXX"}, {".2."}, {"..."}) == water::dry);
  CHECK(middle({"XXX"}, {"2.."}) == 1);
  CHECK(middle({"XXX"}, {"1.1"}) == water::dry);
  CHECK(middle({"XXX"}, {"..."}) == water::dry);
}

TEST_CASE("source sides are counted on the four sides only") {
  Poured const poured({{"SSS", "S.S", "SSS"}, {"XXX", "XSX", "XXX"}});
  CHECK(water::source_sides(poured.now(), poured.at({1, 1, 0})) == 4);
  CHECK(water::source_sides(poured.now(), poured.at({0, 0, 0})) == 2);
}
