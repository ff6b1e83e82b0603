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

Finding stale(std::size_t acceptance, model::Acceptance const& accepted, int inputs) {
  Finding finding;
  finding.kind = FindingKind::stale_acceptance;
  finding.severity = model::row_of(finding.kind).severity;
  if (accepted.cell) finding.cells = {*accepted.cell};
  finding.acceptance = acceptance;
  finding.rows = logic::RowSet(inputs, true);
  return finding;
}

}  // namespace

void accept(model::Design const& design, logic::Truth const& truth,
            std::vector<Finding>& findings) {
  std::vector<Finding> unanswered;
  for (std::size_t a = 0; a < design.acceptances.size(); ++a) {
    auto const& acceptance = design.acceptances[a];
    std::optional<logic::RowSet> rows;
    if (acceptance.condition) rows = truth.of(*acceptance.condition);
    bool is_answered = false;
    for (auto& finding : findings) {
      if (!covers(acceptance, rows, finding)) continue;
      is_answered = true;
      if (!finding.accepted_by) finding.accepted_by = a;
    }
    if (!is_answered) unanswered.push_back(stale(a, acceptance, truth.input_count()));
  }
  findings.insert(findings.end(), unanswered.begin(), unanswered.end());
}

}  // namespace leat::findings
