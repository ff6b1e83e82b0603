#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("thin cushion: one cell of water under a long drop is unsafe") {
  auto const design = shaft(6, 1, 1);
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::thin_cushion);
  CHECK(places(design, finding) == Places{"2 0 1"});
  CHECK(finding.measured == 1);
  CHECK(finding.limit == 2);
  CHECK(finding.severity == model::Severity::warning);
}

TEST_CASE("thin cushion: two cells are a note, three are none") {
  auto const judgement = judge(shaft(7, 1, 2));
  auto const& finding = only(judgement, FindingKind::thin_cushion);
  CHECK(finding.measured == 2);
  CHECK(finding.limit == 3);
  CHECK(finding.severity == model::Severity::note);
  CHECK_FALSE(has(judge(shaft(8, 1, 3)), FindingKind::thin_cushion));
}

TEST_CASE("no thin cushion: under a short drop, or where there is no water at all") {
  CHECK_FALSE(has(judge(shaft(3, 1, 1)), FindingKind::thin_cushion));
  CHECK_FALSE(has(judge(shaft(6, 1, 0)), FindingKind::thin_cushion));
}
