#include "engine/water/lanes.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

// `v` is water and `a` rock while their lever is on: the lever off, and on.
std::vector<model::Arrangement> off_and_on(model::Design const& design) {
  std::vector<bool> const off(design.fills.size(), false), on(design.fills.size(), true);
  return {{design, off}, {design, on}};
}

}  // namespace

TEST_CASE("one bit a lane: what is wet, how strong, and what flows where") {
  auto const design = draw({{"XXXX"}, {"w.a."}});
  auto const arrangements = off_and_on(design);
  water::Lanes lanes(arrangements);
  lanes.settle();
  auto const at = [&](int x) { return design.grid.cell({x, 0, 1}); };
  CHECK(lanes.is_source(at(0)) == 3);
  CHECK(lanes.is_wet(at(1)) == 3);
  CHECK(lanes.is_wet(at(2)) == 1);
  CHECK(lanes.is_strong(at(2), 6) == 1);
  CHECK(lanes.is_strong(at(2), 7) == 0);
  CHECK(lanes.state(at(3), 0) == 5);
  CHECK(lanes.state(at(3), 1) == water::dry);
  CHECK(lanes.steps(0) == 4);
  CHECK(lanes.steps(1) == 2);
  CHECK(lanes.current(at(1), 0) == water::Current{2, 0});
  CHECK(lanes.current(at(1), 1) == water::Current{1, 0});
}

TEST_CASE("lanes switch each from its own field, and remember what formed there") {
  auto const design = draw({{"XXXXX"}, {"w.v.X"}});
  auto const arrangements = off_and_on(design);
  auto const off = water::settle_fresh(arrangements[0]).field;
  auto const on = water::settle_fresh(arrangements[1]).field;
  std::vector<water::Switching> const switchings{{&arrangements[0], &off, &arrangements[0]},
                                                 {&arrangements[1], &on, &arrangements[0]}};
  water::Lanes lanes(switchings);
  lanes.settle();
  CHECK(lanes.is_source(design.grid.cell({1, 0, 1})) == 2);
  CHECK(lanes.steps(0) == 0);
  CHECK(lanes.unpacked()[0].field == off);
}

TEST_CASE("the strongest practice and the weakest fit lanes") {
  for (int strength : {2, 16, 17, 100}) {
    auto design = draw({{"XXXXXXXXXXXXXXXXXXXXXXXX"}, {"w......................."}});
    design.practice.set(model::Rule::source_strength, strength);
    auto const lanes = water::settle_fresh_lanes(off_and_on(design));
    CHECK(lanes[0].field == water::settle_reference(off_and_on(design)[0]).field);
    CHECK(lanes[0].field == water::settle_fresh(off_and_on(design)[0]).field);
  }
}
