#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

namespace {
// One pinned finding at 2 0 1 while lever 0 is on, and what is accepted.
std::vector<findings::Finding> judged(model::Acceptance acceptance) {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  design.acceptances = {acceptance};
  return judge(design).findings;
}
bool is_accepted(model::Acceptance acceptance) {
  for (auto const& finding : judged(acceptance)) {
    if (finding.kind == FindingKind::pinned) return finding.accepted_by == 0u;
  }
  return false;
}
model::Cell cell(model::Place at) {
  return draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}}).grid.cell(at);
}
}  // namespace

TEST_CASE("accepted: findings of the kind, at the cell where one is given") {
  CHECK(is_accepted({FindingKind::pinned, {}, {}}));
  CHECK(is_accepted({FindingKind::pinned, cell({2, 0, 1}), {}}));
  CHECK_FALSE(is_accepted({FindingKind::pinned, cell({1, 0, 1}), {}}));
  CHECK_FALSE(is_accepted({FindingKind::dry_stand, {}, {}}));
}

TEST_CASE("accepted: only where the condition covers all rows of the finding") {
  CHECK(is_accepted({FindingKind::pinned, {}, model::ExpressionId{0}}));        // lever 0
  CHECK_FALSE(is_accepted({FindingKind::pinned, {}, model::ExpressionId{1}}));  // lever 1
}

TEST_CASE("accepted findings are listed, not hidden") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const before = judge(design).findings.size();
  design.acceptances = {{FindingKind::pinned, {}, {}}};
  CHECK(judge(design).findings.size() == before);
}

TEST_CASE("stale acceptance: one to which nothing answers is a finding itself") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const at = cell({1, 0, 1});
  design.acceptances = {{FindingKind::pinned, {}, {}}, {FindingKind::pinned, at, {}}};
  auto const judgement = judge(design);
  auto const& stale = only(judgement, FindingKind::stale_acceptance);
  CHECK(stale.acceptance == 1u);
  CHECK(stale.cells == std::vector{at});
}
