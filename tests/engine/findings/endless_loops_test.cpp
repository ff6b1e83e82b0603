#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("endless loop: two flows that push a body back and forth for ever") {
  auto const design = draw({{"XXXXXX"}, {"wi...w"}, {"......"}});
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::endless_loop)) == Places{"2 0 1", "3 0 1"});
  CHECK(route(judgement).verdict == body::Verdict::lost);
}

TEST_CASE("no endless loop: with a way out of it a body leaves") {
  auto const open = draw({{"XXXXXX", "XXXXXX"}, {"wi...w", "XXXAXX"}, {"......", "XXX.XX"}});
  CHECK_FALSE(has(judge(open), FindingKind::endless_loop));
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..w"}, {"....."}})), FindingKind::endless_loop));
}
