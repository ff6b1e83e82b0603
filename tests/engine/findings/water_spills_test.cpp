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

TEST_CASE("water spill: the cells from which water leaves an open drawing") {
  auto const design = leaking();
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::water_spill);
  CHECK(places(design, finding) == Places{"4 1 1", "3 2 1"});
  CHECK(finding.inlets.empty());
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::water_spill));
}
