#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("split route: at the last cell that all ways pass, with the outlets") {
  auto const design = draw({{"XXXXX", "XXXXX"}, {"wi..A", "XXBXX"}, {".....", "XX.XX"}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::split_route);
  CHECK(places(design, finding) == Places{"2 0 1"});
  CHECK(finding.outlets == std::vector<model::OutletId>{0, 1});
  CHECK(finding.rows.is_full());
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::split_route));
}

TEST_CASE("split route: where bodies enter apart and never meet, the inlet itself is named") {
  auto const design = draw({{"XXXXXXX"}, {"Ai.w.iB"}, {"......."}});
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::split_route)) == Places{"1 0 1", "5 0 1"});
}
