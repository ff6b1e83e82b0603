#include "engine/logic/cone.hpp"

#include <algorithm>
#include <unordered_map>

namespace leat::logic {

using model::ExpressionId;
using model::Operator;
using model::SignalId;

Cones::Cones(model::Circuit const& circuit)
    : circuit_(&circuit),
      place_of_wire_(circuit.signals.size(), none),
      number_of_(circuit.signals.size(), none),
      copy_of_(circuit.expressions.size(), none) {
  for (std::size_t i = 0; i < circuit.wire_order.size(); ++i)
    place_of_wire_[circuit.wire_order[i]] = static_cast<std::uint32_t>(i);
  for (auto never : circuit.nevers) {
    auto& signals = signals_of_never_.emplace_back();
    std::vector<ExpressionId> open{never};
    while (!open.empty()) {
      auto const node = circuit.expressions[open.back()];
      open.pop_back();
      if (node.op == Operator::signal) signals.push_back(node.left);
      if (node.op >= Operator::negation) open.push_back(node.left);
      if (node.op > Operator::negation) open.push_back(node.right);
    }
  }
}

void Cones::add_nevers(Cone& cone) {
  for (std::size_t n = 0; n < signals_of_never_.size(); ++n) {
    auto const& signals = signals_of_never_[n];
    bool const is_own = std::all_of(signals.begin(), signals.end(),
                                    [&](SignalId signal) { return number_of_[signal] != none; });
    if (is_own) cone.circuit.nevers.push_back(copy(circuit_->nevers[n], cone));
  }
}

SignalId Cones::number(SignalId signal, Cone& cone) {
  auto& number = number_of_[signal];
  if (number == none) {
    number = static_cast<std::uint32_t>(cone.signals.size());
    cone.signals.push_back(signal);
  }
  return number;
}

// Operands first, by a stack of its own: chains can be longer than any call stack.
ExpressionId Cones::copy(ExpressionId root, Cone& cone) {
  open_.assign(1, root);
  while (!open_.empty()) {
    auto const id = open_.back();
    if (copy_of_[id] != none) {
      open_.pop_back();
      continue;
    }
    auto node = circuit_->expressions[id];
    auto const is_binary = node.op > Operator::negation;
    bool is_ready = true;
    if (is_binary && copy_of_[node.right] == none) {
      open_.push_back(node.right);
      is_ready = false;
    }
    if ((is_binary || node.op == Operator::negation) && copy_of_[node.left] == none) {
      open_.push_back(node.left);
      is_ready = false;
    }
    if (!is_ready) continue;
    if (node.op == Operator::signal) node.left = number(node.left, cone);
    if (is_binary) node.right = copy_of_[node.right];
    if (is_binary || node.op == Operator::negation) node.left = copy_of_[node.left];
    copy_of_[id] = cone.circuit.add(node);
    copied_.push_back(id);
    open_.pop_back();
  }
  return copy_of_[root];
}

Cone Cones::of(std::vector<ExpressionId> const& roots, std::vector<Lever> const& levers) {
  std::unordered_map<SignalId, bool> given;
  for (auto const& lever : levers) given.emplace(lever.signal, lever.starts_on);
  Cone cone;
  for (auto root : roots) cone.roots.push_back(copy(root, cone));
  for (std::size_t i = 0; i < cone.signals.size(); ++i) {
    auto signal = circuit_->signals[cone.signals[i]];
    if (auto const lever = given.find(cone.signals[i]); lever != given.end())
      signal = {model::SignalKind::lever, lever->second};
    if (!signal.is_input()) signal.definition = copy(signal.definition, cone);
    if (signal.kind == model::SignalKind::latch) signal.reset = copy(signal.reset, cone);
    cone.circuit.signals.push_back(signal);
  }
  auto& wires = cone.circuit.wire_order;
  for (SignalId s = 0; s < cone.signals.size(); ++s) {
    if (cone.circuit.signals[s].kind == model::SignalKind::wire) wires.push_back(s);
  }
  std::sort(wires.begin(), wires.end(), [&](SignalId a, SignalId b) {
    return place_of_wire_[cone.signals[a]] < place_of_wire_[cone.signals[b]];
  });
  add_nevers(cone);
  forget(cone);
  return cone;
}

void Cones::forget(Cone const& cone) {
  for (auto signal : cone.signals) number_of_[signal] = none;
  for (auto id : copied_) copy_of_[id] = none;
  copied_.clear();
}

}  // namespace leat::logic
