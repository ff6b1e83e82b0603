#include "engine/compare/joint_circuit.hpp"

namespace leat::compare {

namespace {

using model::Circuit;
using model::ExpressionId;
using model::Operator;
using model::SignalId;

// Adds a circuit whose signals have the joint ids `ids`; gives the joint ids of its expressions.
std::vector<ExpressionId> add_expressions(Circuit const& own, std::vector<SignalId> const& ids,
                                          Circuit& joint) {
  std::vector<ExpressionId> added;
  added.reserve(own.expressions.size());
  for (auto node : own.expressions) {
    if (node.op == Operator::signal) node.left = ids[node.left];
    if (node.op >= Operator::negation) node.left = added[node.left];
    if (node.op > Operator::negation) node.right = added[node.right];
    added.push_back(joint.add(node));
  }
  return added;
}

void add_meaning(Circuit const& own, std::vector<SignalId> const& ids,
                 std::vector<ExpressionId> const& expressions, Circuit& joint) {
  for (SignalId s = 0; s < own.signals.size(); ++s) {
    auto signal = own.signals[s];
    if (!signal.is_input()) signal.definition = expressions[signal.definition];
    if (signal.kind == model::SignalKind::latch) signal.reset = expressions[signal.reset];
    joint.signals[ids[s]] = signal;
  }
  for (auto wire : own.wire_order) joint.wire_order.push_back(ids[wire]);
  for (auto never : own.nevers) joint.nevers.push_back(expressions[never]);
}

}  // namespace

JointCircuit joined(Circuit const& before, Circuit const& after,
                    Counterparts<SignalId> const& counterparts) {
  JointCircuit joint;
  auto& circuit = joint.circuit;
  for (SignalId s = 0; s < after.signals.size(); ++s) joint.after.push_back(s);
  auto next = static_cast<SignalId>(after.signals.size());
  for (SignalId s = 0; s < before.signals.size(); ++s) {
    bool const is_shared = counterparts[s] && before.signals[s].is_input() &&
                           after.signals[*counterparts[s]].is_input();
    joint.before.push_back(is_shared ? *counterparts[s] : next++);
  }
  circuit.signals.resize(next);
  joint.before_expressions = add_expressions(before, joint.before, circuit);
  joint.after_expressions = add_expressions(after, joint.after, circuit);
  add_meaning(before, joint.before, joint.before_expressions, circuit);
  add_meaning(after, joint.after, joint.after_expressions, circuit);
  return joint;
}

}  // namespace leat::compare
