#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("dry stand: in no water, carried, in the rows without water") {
  auto const design = draw({{"XXXX"}, {"vi.A"}, {"...."}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::dry_stand);
  CHECK(places(design, finding) == Places{"1 0 1"});
  CHECK(finding.rows == ~logic::RowSet::where_on(2, 0));
  CHECK(finding.condition == std::vector{logic::Cube{1, 0}});
  CHECK(finding.severity == model::Severity::error);
  CHECK(finding.inlets == std::vector<model::InletId>{0});
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::dry_stand));
}

TEST_CASE("still water: in water without a push") {
  auto const design = draw({{"XXX"}, {"wiw"}, {"..."}});
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::still_water)) == Places{"1 0 1"});
  CHECK_FALSE(has(judgement, FindingKind::pinned));
  CHECK_FALSE(has(judge(draw({{"XXXX"}, {"wi.A"}, {"...."}})), FindingKind::still_water));
}

TEST_CASE("pinned: pushed against what it cannot enter, in the rows that shut the way") {
  auto const design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::pinned);
  CHECK(places(design, finding) == Places{"2 0 1"});
  CHECK(finding.rows == logic::RowSet::where_on(2, 0));
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::pinned));
}
