#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("narrow pit: one cell wide along the carried side under a long drop") {
  auto const design = shaft(5, 1);
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::narrow_pit);
  CHECK(places(design, finding) == Places{"2 0 1"});
  CHECK(finding.measured == 1);
  CHECK(finding.limit == 2);
}

TEST_CASE("no narrow pit: two cells wide, or under a short drop") {
  CHECK_FALSE(has(judge(shaft(5, 2)), FindingKind::narrow_pit));
  CHECK_FALSE(has(judge(shaft(8, 2, 3)), FindingKind::narrow_pit));  // of water
  CHECK_FALSE(has(judge(shaft(3, 1)), FindingKind::narrow_pit));
}

TEST_CASE("narrow pit: told though as long a fall, carried nowhere, ends in the same place") {
  auto design = shaft(5, 1);
  design.inlets[0].cells.push_back(design.grid.cell({2, 0, 6}));
  CHECK(has(judge(design), FindingKind::narrow_pit));
}
