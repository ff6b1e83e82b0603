#include <algorithm>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

bool covers(model::Acceptance const& acceptance, std::optional<logic::RowSet> const& rows,
            Finding const& finding) {
  if (acceptance.kind != finding.kind) return false;
  if (acceptance.cell &&
      !std::binary_search(finding.cells.begin(), finding.cells.end(), *acceptance.cell)) {
    return false;
  }
  return !rows || (finding.rows & ~*rows).is_empty();
}

Finding stale(std::size_t acceptance, model::Acceptance const& accepted,
              logic::RowSet const& reachable) {
  auto finding = finding_of(FindingKind::stale_acceptance);
  if (accepted.cell) finding.cells = {*accepted.cell};
  finding.acceptance = acceptance;
  finding.rows = reachable;
  return finding;
}

}  // namespace

void accept(Explored const& explored, std::vector<Finding>& findings) {
  auto const& acceptances = explored.design.acceptances;
  std::vector<Finding> unanswered;
  for (std::size_t a = 0; a < acceptances.size(); ++a) {
    auto const& acceptance = acceptances[a];
    std::optional<logic::RowSet> rows;
    if (acceptance.condition) rows = explored.truth.of(*acceptance.condition);
    bool is_answered = false;
    for (auto& finding : findings) {
      if (!covers(acceptance, rows, finding)) continue;
      is_answered = true;
      if (!finding.accepted_by) finding.accepted_by = a;
    }
    if (!is_answered) {
      unanswered.push_back(stale(a, acceptance, explored.combinations.reachable));
    }
  }
  findings.insert(findings.end(), unanswered.begin(), unanswered.end());
}

}  // namespace leat::findings
