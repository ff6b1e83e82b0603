#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

namespace {
// A lift of `sources` sources over a sign.
model::Design lift(int sources) {
  std::vector<Level> levels{{"X"}, {"s"}};
  for (int i = 0; i < sources; ++i) levels.push_back({"w"});
  levels.insert(levels.end(), 2, {"."});
  auto design = draw(levels);
  design.inlets = {{{design.grid.cell({0, 0, 1})}}};
  return design;
}
}  // namespace

TEST_CASE("stacked sources: two on top of each other in a lift") {
  auto const design = lift(2);
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::stacked_sources);
  CHECK(places(design, finding) == Places{"0 0 2", "0 0 3"});
  CHECK(finding.measured == 2);
  CHECK(finding.limit == 1);
}

TEST_CASE("no stacked sources: one in a lift, or two where no body rises") {
  CHECK_FALSE(has(judge(lift(1)), FindingKind::stacked_sources));
  CHECK_FALSE(
      has(judge(draw({{"XXXX"}, {"wi.A"}, {"w..."}, {"X..."}})), FindingKind::stacked_sources));
}

TEST_CASE("no stacked sources: a body that fell into a cushion of them floats up again") {
  auto const judgement =
      judge(draw({{"XXXw"}, {"XXXw"}, {"XXX."}, {"XXX."}, {"XXX."}, {"XXX."}, {"wi.s"}, {"...."}}));
  CHECK_FALSE(has(judgement, FindingKind::stacked_sources));
}
