#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

// Whether it takes time to follow: a delay is among what it looks at.
bool takes_time(model::Circuit const& circuit, model::SignalId signal) {
  if (circuit.signals[signal].kind == model::SignalKind::delay) return true;
  if (circuit.signals[signal].kind != model::SignalKind::wire) return false;
  auto const used = logic::used_signals(circuit, {circuit.signals[signal].definition});
  for (model::SignalId s = 0; s < used.size(); ++s) {
    if (used[s] && circuit.signals[s].kind == model::SignalKind::delay) return true;
  }
  return false;
}

}  // namespace

// Signals that never change agree with every other such signal by accident: they are left out. So
// is what takes time to follow: it agrees once all is quiet, and differs on the way there, which is
// what it is for.
std::vector<Finding> twin_signals(Explored const& explored) {
  auto const& signals = explored.design.circuit.signals;
  auto const& reachable = explored.combinations.reachable;
  std::vector<logic::RowSet> on;
  std::vector<bool> is_told;
  for (model::SignalId s = 0; s < signals.size(); ++s) {
    on.push_back(explored.truth.of_signal(s) & reachable);
    is_told.push_back(on[s].is_empty() || on[s] == reachable ||
                      takes_time(explored.design.circuit, s));
  }
  std::vector<Finding> findings;
  for (model::SignalId first = 0; first < signals.size(); ++first) {
    if (is_told[first]) continue;
    std::vector<model::SignalId> group{first};
    for (auto other = first + 1; other < signals.size(); ++other) {
      if (is_told[other] || on[other] != on[first]) continue;
      is_told[other] = true;
      group.push_back(other);
    }
    if (group.size() < 2) continue;
    auto finding = finding_of(FindingKind::twin_signals);
    finding.signals = std::move(group);
    finding.rows = reachable;
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
