#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("tight inlet: the body does not fit where it enters, in the rows in which it does not") {
  auto const design = draw({{"XXX"}, {"wiA"}, {"Xa."}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::tight_inlet);
  CHECK(places(design, finding) == Places{"1 0 1"});
  CHECK(finding.rows == logic::RowSet::where_on(2, 0));
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::tight_inlet));
}

TEST_CASE("tight inlet: told for the bodies that do not fit") {
  auto design = draw({{"XXX"}, {"wiA"}, {"XX."}});
  design.profiles = {{}, {.footprint = 1, .height = 1}};
  auto const judgement = judge(design);
  CHECK(only(judgement, FindingKind::tight_inlet).profiles == std::vector<model::ProfileId>{0});
}
