#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

namespace {
// The water runs east between rocks and leaves the open drawing past the last cell, and beside A.
model::Design leaking() {
  auto design =
      draw({{"XXXXX", "XXXXX", "XXXXX"}, {"XXXXX", "Xwi..", "XXXAX"}, {"XXXXX", "X....", "XXX.X"}});
  open_the_outside(design);
  return design;
}
}  // namespace

TEST_CASE("body spill: the last cell inside") {
  auto const design = leaking();
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::body_spill)) == Places{"4 1 1"});
  CHECK(route(judgement).spills);
  auto walled = leaking();
  walled.fill_of[walled.grid.cell({4, 1, 1})] = walled.fill_of[walled.grid.cell({0, 0, 0})];
  CHECK_FALSE(has(judge(walled), FindingKind::body_spill));
}
