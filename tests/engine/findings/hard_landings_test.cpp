#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("hard landing: a drop longer than is safe, onto no water") {
  auto const design = shaft(4, 1);
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::hard_landing);
  CHECK(places(design, finding) == Places{"2 0 1"});
  CHECK(finding.measured == 4);
  CHECK(finding.limit == 3);
}

TEST_CASE("no hard landing: a drop as long as is safe, or into water") {
  CHECK_FALSE(has(judge(shaft(3, 1)), FindingKind::hard_landing));
  CHECK_FALSE(has(judge(shaft(6, 1, 1)), FindingKind::hard_landing));
}

TEST_CASE("hard landing: the whole fall counts, and each body's own safe fall") {
  auto design = shaft(9, 1);
  auto const judgement = judge(design);
  CHECK(only(judgement, FindingKind::hard_landing).measured == 9);
  design.profiles[0].safe_fall = 9;
  CHECK_FALSE(has(judge(design), FindingKind::hard_landing));
}
