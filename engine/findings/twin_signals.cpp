#include "engine/findings/families.hpp"

namespace leat::findings {

// Signals that never change agree with every other such signal by accident: they are left out.
std::vector<Finding> twin_signals(model::Design const& design, logic::Truth const& truth) {
  auto const count = design.circuit.signals.size();
  std::vector<bool> is_told(count, false);
  std::vector<Finding> findings;
  for (model::SignalId first = 0; first < count; ++first) {
    auto const& rows = truth.of_signal(first);
    if (is_told[first] || rows.is_empty() || rows.is_full()) continue;
    std::vector<model::SignalId> group{first};
    for (auto other = first + 1; other < count; ++other) {
      if (is_told[other] || truth.of_signal(other) != rows) continue;
      is_told[other] = true;
      group.push_back(other);
    }
    if (group.size() < 2) continue;
    Finding finding;
    finding.kind = FindingKind::twin_signals;
    finding.severity = model::row_of(finding.kind).severity;
    finding.signals = std::move(group);
    finding.rows = logic::RowSet(truth.input_count(), true);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
