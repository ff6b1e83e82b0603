#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

TEST_CASE("swimmer pool: sixteen joined sources, whatever bodies do") {
  std::vector<Level> levels{{"XXXX", "XXXX", "XXXX", "XXXX"}, {"wwww", "wwww", "wwww", "wwww"}};
  auto const judgement = judge(draw(levels));
  auto const& finding = only(judgement, FindingKind::swimmer_pool);
  CHECK(finding.cells.size() == 16);
  CHECK(finding.measured == 16);
  CHECK(finding.limit == 16);
  levels[1][0][0] = 'X';
  CHECK_FALSE(has(judge(draw(levels)), FindingKind::swimmer_pool));
}

TEST_CASE("swimmer pool: joined by faces only, over levels, formed sources too") {
  CHECK_FALSE(
      has(judge(draw({{"XXXXXXXXXXXXXXXXX"}, {"wwwwwwwwXwwwwwwww"}})), FindingKind::swimmer_pool));
  CHECK(has(judge(draw({{"XXXXXXXX"}, {"wwwwwwww"}, {"wwwwwwww"}})), FindingKind::swimmer_pool));
  CHECK(
      has(judge(draw({{"XXXXXXXXXXXXXXXXX"}, {"w.w.w.w.w.w.w.w.w"}})), FindingKind::swimmer_pool));
}
