#include "engine/logic/truth.hpp"

namespace leat::logic {

using model::ExpressionId;
using model::Operator;
using model::SignalId;

namespace {

bool is_binary(Operator op) {
  return op == Operator::conjunction || op == Operator::disjunction || op == Operator::parity;
}

}  // namespace

Truth::Truth(model::Circuit const& circuit, std::vector<SignalId> inputs)
    : circuit_(&circuit), inputs_(std::move(inputs)) {
  auto const k = input_count();
  of_signal_.reserve(circuit.signals.size());
  for (auto const& signal : circuit.signals) of_signal_.emplace_back(k, signal.starts_on);
  for (int i = 0; i < k; ++i)
    of_signal_[inputs_[static_cast<std::size_t>(i)]] = RowSet::where_on(k, i);
  for (auto wire : circuit.wire_order) of_signal_[wire] = of(circuit.signals[wire].definition);
}

// A long chain `a and b and c ...` leans to the left: it is walked down in a loop, so the recursion
// is only as deep as the expression is nested.
RowSet Truth::of(ExpressionId id) const {
  std::vector<ExpressionId> chain;
  while (is_binary(circuit_->expressions[id].op)) {
    chain.push_back(id);
    id = circuit_->expressions[id].left;
  }
  auto const& leaf = circuit_->expressions[id];
  auto value = leaf.op == Operator::constant ? RowSet(input_count(), leaf.left != 0)
               : leaf.op == Operator::signal ? of_signal_[leaf.left]
                                             : ~of(leaf.left);
  for (auto link = chain.rbegin(); link != chain.rend(); ++link) {
    auto const& node = circuit_->expressions[*link];
    auto const right = of(node.right);
    if (node.op == Operator::conjunction) value &= right;
    if (node.op == Operator::disjunction) value |= right;
    if (node.op == Operator::parity) value ^= right;
  }
  return value;
}

Row Truth::as_built() const {
  Row row = 0;
  for (auto input : inputs_) row = row << 1 | (circuit_->signals[input].starts_on ? 1u : 0u);
  return row;
}

// Down the chain in a loop, as in Truth::of.
bool is_true(model::Circuit const& circuit, ExpressionId id, std::vector<bool> const& signals) {
  std::vector<ExpressionId> chain;
  while (is_binary(circuit.expressions[id].op)) {
    chain.push_back(id);
    id = circuit.expressions[id].left;
  }
  auto const& leaf = circuit.expressions[id];
  bool value = leaf.op == Operator::constant ? leaf.left != 0
               : leaf.op == Operator::signal ? signals[leaf.left]
                                             : !is_true(circuit, leaf.left, signals);
  for (auto link = chain.rbegin(); link != chain.rend(); ++link) {
    auto const& node = circuit.expressions[*link];
    bool const right = is_true(circuit, node.right, signals);
    if (node.op == Operator::conjunction) value = value && right;
    if (node.op == Operator::disjunction) value = value || right;
    if (node.op == Operator::parity) value = value != right;
  }
  return value;
}

std::vector<bool> used_signals(model::Circuit const& circuit,
                               std::vector<ExpressionId> const& roots) {
  std::vector<bool> seen(circuit.expressions.size(), false), used(circuit.signals.size(), false);
  std::vector<ExpressionId> open = roots;
  auto const use = [&](SignalId signal) {
    if (used[signal]) return;
    used[signal] = true;
    auto const& source = circuit.signals[signal];
    if (!source.is_input()) open.push_back(source.definition);
    if (source.kind == model::SignalKind::latch) open.push_back(source.reset);
  };
  while (!open.empty()) {
    auto const id = open.back();
    open.pop_back();
    if (seen[id]) continue;
    seen[id] = true;
    auto const& node = circuit.expressions[id];
    if (node.op == Operator::signal) use(node.left);
    if (node.op == Operator::negation || is_binary(node.op)) open.push_back(node.left);
    if (is_binary(node.op)) open.push_back(node.right);
  }
  return used;
}

}  // namespace leat::logic
