#include "engine/body/surroundings.hpp"

#include <cmath>

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

model::Profile const hopper{.footprint = 1, .height = 1};
model::Profile const crawler{.footprint = 2, .height = 1};
model::Profile const ox{.footprint = 2, .height = 2};

bool fits(std::vector<Level> const& levels, model::Profile profile, model::Place at = {0, 0, 0}) {
  Poured const poured(levels, profile);
  return poured.here().fits(poured.at(at));
}

bool carried(std::string const& below, model::Profile profile = {}) {
  std::string const open(below.size(), '.');
  Poured const poured({{below, below}, {open, open}, {open, open}}, profile);
  return poured.here().is_carried(poured.at({0, 0, 1}));
}

body::Push push(std::vector<Level> const& levels, model::Place at, model::Profile profile = {}) {
  Poured const poured(levels, profile);
  return poured.here().push(poured.at(at));
}

}  // namespace

TEST_CASE("fits: every cell of every column may be entered") {
  CHECK(fits({{"."}, {"."}}, {}));
  CHECK_FALSE(fits({{"."}, {"X"}}, {}));
  CHECK(fits({{"."}, {"X"}}, hopper));
  CHECK(fits({{"..", ".."}, {"XX", "XX"}}, crawler));
  CHECK_FALSE(fits({{"..", ".X"}}, crawler));
  CHECK_FALSE(fits({{"..", "X."}}, crawler));
  CHECK(fits({{"..", ".."}, {"..", ".."}}, ox));
  CHECK_FALSE(fits({{"..", ".."}, {"..", ".X"}}, ox));
}

TEST_CASE("fits: signs, plates and water are entered, a grate and the outside are not") {
  CHECK(fits({{"s"}, {"p"}}, {}));
  CHECK(fits({{"w"}, {"F"}}, {}));
  CHECK_FALSE(fits({{"g"}, {"."}}, {}));
  CHECK_FALSE(fits({{"."}}, {}));
  CHECK_FALSE(fits({{".."}}, crawler));
}

TEST_CASE("wet: any of the body's cells; feet wet: any at feet level") {
  Poured const feet({{"7"}, {"."}}), head({{"."}, {"7"}}), over({{"."}, {"."}, {"7"}});
  CHECK(feet.here().is_wet(feet.at({0, 0, 0})));
  CHECK(feet.here().are_feet_wet(feet.at({0, 0, 0})));
  CHECK_FALSE(feet.here().is_wet_above_feet(feet.at({0, 0, 0})));
  CHECK(head.here().is_wet(head.at({0, 0, 0})));
  CHECK_FALSE(head.here().are_feet_wet(head.at({0, 0, 0})));
  CHECK(head.here().is_wet_above_feet(head.at({0, 0, 0})));
  CHECK_FALSE(over.here().is_wet(over.at({0, 0, 0})));
  CHECK(over.here().is_wet_over_head(over.at({0, 0, 0})));
  Poured const corner({{"..", ".3"}}, crawler);
  CHECK(corner.here().are_feet_wet(corner.at({0, 0, 0})));
}

TEST_CASE("carried: by what carries, or by what the body may not enter, under any column") {
  CHECK(carried("X"));
  CHECK(carried("g"));
  CHECK_FALSE(carried("."));
  CHECK_FALSE(carried("s"));
  CHECK_FALSE(carried("p"));
  CHECK_FALSE(carried("w"));
  CHECK(carried(".X", crawler));
  CHECK_FALSE(carried("..", crawler));
}

TEST_CASE("push: the sum of the unit vectors of the wet cells filled") {
  auto const straight = push({{"XXX"}, {"765"}, {"..."}}, {1, 0, 1});
  CHECK(straight.x == Approx(1));
  CHECK(straight.y == Approx(0));
  auto const both = push({{"XXX"}, {"765"}, {"765"}}, {1, 0, 1});
  CHECK(both.x == Approx(2));
  auto const diagonal = push({{"XXX", "XXX"}, {"X7X", "X65"}, {"...", "..."}}, {1, 1, 1});
  CHECK(diagonal.x == Approx(std::sqrt(0.5)));
  CHECK(diagonal.y == Approx(std::sqrt(0.5)));
  auto const against = push({{"XXX"}, {"765"}, {"567"}}, {1, 0, 1});
  CHECK(against.is_none());
}

TEST_CASE("push: footprint 2 is pushed by all its cells") {
  auto const crosswise = push({{"7654", "7654"}}, {1, 0, 0}, crawler);
  CHECK(crosswise.x == Approx(4));
  CHECK(crosswise.y == Approx(0));
  auto const one_row = push({{"7654", "...."}}, {1, 0, 0}, crawler);
  CHECK(one_row.x == Approx(2));
}

TEST_CASE("push: falling water beside what carries, or one below it, counts 1 / sqrt(37)") {
  // Falling water amid open cells, a flow to the east of it, and one more thing to the west.
  auto const falling_beside = [](char beside, char above_beside, char falling = 'F') {
    Level level{"...", "..6", "..."}, above{"...", "...", "..."};
    level[1][0] = beside;
    level[1][1] = falling;
    above[1][0] = above_beside;
    return push({{"XXX", "XXX", "XXX"}, level, above}, {1, 1, 1}).x;
  };
  double const small = 1 / std::sqrt(37.0);
  CHECK(falling_beside('.', '.') == Approx(1));
  CHECK(falling_beside('X', '.') == Approx(small));
  CHECK(falling_beside('g', '.') == Approx(small));
  CHECK(falling_beside('.', 'X') == Approx(small));
  CHECK(falling_beside('s', 's') == Approx(1));
  CHECK(falling_beside('X', 'X', '7') == Approx(1));
}

TEST_CASE("push: a current without direction pushes nowhere") {
  CHECK(push({{"XXX"}, {"S7S"}, {"..."}}, {1, 0, 1}).is_none());
  CHECK(push({{"XXX"}, {"..."}, {"..."}}, {1, 0, 1}).is_none());
  CHECK_FALSE(push({{"XXX"}, {"S76"}, {"..."}}, {1, 0, 1}).is_none());
}
