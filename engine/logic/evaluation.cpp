#include "engine/logic/evaluation.hpp"

#include <utility>

namespace leat::logic {

using model::Operator;

Evaluation::Evaluation(model::Circuit const& circuit, Diagram& diagram,
                       std::vector<Function> of_signal)
    : circuit_(circuit),
      diagram_(diagram),
      of_signal_(std::move(of_signal)),
      known_(circuit.expressions.size()) {
  for (auto wire : circuit.wire_order) of_signal_[wire] = of(circuit.signals[wire].definition);
}

// Operands first, by a stack of its own: chains can be longer than any call stack.
Diagram::Function Evaluation::of(model::ExpressionId root) {
  std::vector<model::ExpressionId> open{root};
  while (!open.empty()) {
    auto const id = open.back();
    auto const& node = circuit_.expressions[id];
    auto const operands = open.size();
    if (node.op >= Operator::negation && !known_[node.left]) open.push_back(node.left);
    if (node.op > Operator::negation && !known_[node.right]) open.push_back(node.right);
    if (open.size() > operands) continue;
    open.pop_back();
    if (!known_[id]) known_[id] = computed(node);
  }
  return *known_[root];
}

Diagram::Function Evaluation::computed(model::ExpressionNode const& node) {
  switch (node.op) {
    case Operator::constant:
      return node.left != 0 ? Diagram::always : Diagram::never;
    case Operator::signal:
      return of_signal_[node.left];
    case Operator::negation:
      return !*known_[node.left];
    case Operator::conjunction:
      return diagram_.both(*known_[node.left], *known_[node.right]);
    case Operator::disjunction:
      return diagram_.either(*known_[node.left], *known_[node.right]);
    case Operator::parity:
      break;
  }
  return diagram_.differ(*known_[node.left], *known_[node.right]);
}

}  // namespace leat::logic
