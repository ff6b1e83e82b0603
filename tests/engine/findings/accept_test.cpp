#include <algorithm>

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

TEST_CASE("accepted whole: only where the condition covers all rows of the finding") {
  CHECK(is_accepted({FindingKind::pinned, {}, model::ExpressionId{0}}));        // lever 0
  CHECK_FALSE(is_accepted({FindingKind::pinned, {}, model::ExpressionId{1}}));  // lever 1
}

TEST_CASE("accepted in part: what the condition covers is accepted, the rest stays") {
  auto const all = judged({FindingKind::pinned, {}, model::ExpressionId{1}});  // lever 1
  std::size_t accepted = 0, left = 0;
  for (auto const& finding : all) {
    if (finding.kind == FindingKind::pinned)
      (finding.accepted_by ? accepted : left) += finding.rows.count();
    CHECK(finding.kind != FindingKind::stale_acceptance);
  }
  CHECK(accepted == 1);
  CHECK(left == 1);
}

TEST_CASE("accepted by several: together they cover the finding") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const other = design.circuit.add(
      {model::Operator::negation, model::ExpressionId{1}, model::ExpressionId{0}});
  design.acceptances = {{FindingKind::pinned, {}, model::ExpressionId{1}},
                        {FindingKind::pinned, {}, other}};
  std::vector<std::size_t> by;
  auto const judgement = judge(design);
  for (auto const& finding : judgement.findings) {
    CHECK(finding.kind != FindingKind::stale_acceptance);
    if (finding.kind != FindingKind::pinned) continue;
    REQUIRE(finding.accepted_by);
    by.push_back(*finding.accepted_by);
  }
  std::sort(by.begin(), by.end());
  CHECK(by == std::vector<std::size_t>{0, 1});
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
