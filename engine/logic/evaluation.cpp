#include "engine/logic/evaluation.hpp"

#include <algorithm>
#include <utility>

namespace leat::logic {

using model::ExpressionId;
using model::Operator;

Evaluation::Evaluation(model::Circuit const& circuit, Diagram& diagram,
                       std::vector<Function> of_signal)
    : circuit_(circuit),
      diagram_(diagram),
      of_signal_(std::move(of_signal)),
      known_(circuit.expressions.size()),
      uses_(circuit.expressions.size(), 0) {
  count_uses();
  for (auto wire : circuit.wire_order) of_signal_[wire] = of(circuit.signals[wire].definition);
}

void Evaluation::count_uses() {
  auto const use = [&](ExpressionId id) {
    uses_[id] = std::min<std::uint8_t>(2, static_cast<std::uint8_t>(uses_[id] + 1));
  };
  for (auto const& node : circuit_.expressions) {
    if (node.op >= Operator::negation) use(node.left);
    if (node.op > Operator::negation) use(node.right);
  }
  for (auto const& signal : circuit_.signals) {
    if (!signal.is_input()) use(signal.definition);
  }
}

bool Evaluation::is_step(ExpressionId id, Operator of_chain) const {
  return circuit_.expressions[id].op == of_chain && uses_[id] == 1 && !known_[id];
}

// Of a chain, in no order.
std::vector<ExpressionId> Evaluation::operands_of(ExpressionId id) const {
  auto const& node = circuit_.expressions[id];
  std::vector<ExpressionId> operands;
  if (node.op == Operator::negation) operands.push_back(node.left);
  if (node.op <= Operator::negation) return operands;
  std::vector<ExpressionId> open{node.right, node.left};
  while (!open.empty()) {
    auto const next = open.back();
    open.pop_back();
    if (is_step(next, node.op)) {
      open.push_back(circuit_.expressions[next].right);
      open.push_back(circuit_.expressions[next].left);
    } else {
      operands.push_back(next);
    }
  }
  return operands;
}

// Operands first, by a stack of its own: chains can be longer than any call stack.
Diagram::Function Evaluation::of(ExpressionId root) {
  std::vector<ExpressionId> open{root};
  while (!open.empty()) {
    auto const id = open.back();
    if (known_[id]) {
      open.pop_back();
      continue;
    }
    auto const operands = operands_of(id);
    auto const before = open.size();
    for (auto operand : operands)
      if (!known_[operand]) open.push_back(operand);
    if (open.size() > before) continue;
    open.pop_back();
    known_[id] = computed(circuit_.expressions[id], operands);
  }
  return *known_[root];
}

Diagram::Function Evaluation::computed(model::ExpressionNode const& node,
                                       std::vector<ExpressionId> const& operands) {
  switch (node.op) {
    case Operator::constant:
      return node.left != 0 ? Diagram::always : Diagram::never;
    case Operator::signal:
      return of_signal_[node.left];
    case Operator::negation:
      return !*known_[node.left];
    default:
      return folded(node.op, operands);
  }
}

Diagram::Function Evaluation::folded(Operator op, std::vector<ExpressionId> const& operands) {
  std::vector<Function> functions;
  for (auto operand : operands) functions.push_back(*known_[operand]);
  std::stable_sort(functions.begin(), functions.end(),
                   [&](Function a, Function b) { return diagram_.level(a) > diagram_.level(b); });
  auto result = functions.front();
  for (std::size_t i = 1; i < functions.size(); ++i) {
    if (op == Operator::conjunction)
      result = diagram_.both(result, functions[i]);
    else if (op == Operator::disjunction)
      result = diagram_.either(result, functions[i]);
    else
      result = diagram_.differ(result, functions[i]);
  }
  return result;
}

}  // namespace leat::logic
