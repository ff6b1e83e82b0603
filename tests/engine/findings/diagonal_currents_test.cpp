#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("diagonal current: a push along both axes, where a body passes") {
  auto const design = draw({{"XX", "XX"}, {"wi", ".."}, {"..", ".."}});
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::diagonal_current)) == Places{"1 0 1", "1 1 1"});
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::diagonal_current));
}

TEST_CASE("diagonal current: at a bent corner") {
  auto const design = draw({{"XXX", "XXX", "XXX"}, {"wi.", "XX.", "XXA"}, {"...", "XX.", "XX."}});
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::diagonal_current)) == Places{"2 0 1"});
}
