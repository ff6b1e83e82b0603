#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

bool looks_at_one(model::Circuit const& circuit, model::ExpressionId root,
                  std::vector<bool> const& signals) {
  std::vector<model::ExpressionId> open{root};
  while (!open.empty()) {
    auto const node = circuit.expressions[open.back()];
    open.pop_back();
    if (node.op == model::Operator::constant) continue;
    if (node.op == model::Operator::signal) {
      if (signals[node.left]) return true;
      continue;
    }
    open.push_back(node.left);
    if (node.op != model::Operator::negation) open.push_back(node.right);
  }
  return false;
}

// The signals that take time to follow: delays, and wires that look at one, directly or through
// others. Wires come after those they use, so one pass tells.
std::vector<bool> that_take_time(model::Circuit const& circuit) {
  std::vector<bool> take_time;
  for (auto const& signal : circuit.signals)
    take_time.push_back(signal.kind == model::SignalKind::delay);
  for (auto wire : circuit.wire_order)
    take_time[wire] = looks_at_one(circuit, circuit.signals[wire].definition, take_time);
  return take_time;
}

}  // namespace

// Signals that never change agree with every other such signal by accident: they are left out. So
// is what takes time to follow: it agrees once all is quiet, and differs on the way there, which is
// what it is for.
std::vector<Finding> twin_signals(Explored const& explored) {
  auto const& signals = explored.design.circuit.signals;
  auto const& reachable = explored.combinations.reachable;
  auto const takes_time = that_take_time(explored.design.circuit);
  std::vector<logic::RowSet> on;
  std::vector<bool> is_told;
  for (model::SignalId s = 0; s < signals.size(); ++s) {
    on.push_back(explored.truth.of_signal(s) & reachable);
    is_told.push_back(on[s].is_empty() || on[s] == reachable || takes_time[s]);
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
