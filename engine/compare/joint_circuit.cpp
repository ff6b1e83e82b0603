#include "engine/compare/joint_circuit.hpp"

#include <map>
#include <tuple>

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

// Which signals before do what their counterparts do.
class Likeness {
 public:
  Likeness(Circuit const& before, Circuit const& after, Counterparts<SignalId> const& counterparts)
      : before_(before), after_(after), counterparts_(counterparts) {
    for (SignalId s = 0; s < before.signals.size(); ++s)
      is_alike_.push_back(counterparts[s] &&
                          start_alike(before.signals[s], after.signals[*counterparts[s]]));
    while (!follow_alike()) {
    }
  }

  bool is_alike(SignalId before) const { return is_alike_[before]; }

 private:
  using Form = std::tuple<Operator, std::uint32_t, std::uint32_t>;

  static bool start_alike(model::Signal const& before, model::Signal const& after) {
    if (before.is_input() || after.is_input()) return before.is_input() && after.is_input();
    return before.kind == after.kind && before.starts_on == after.starts_on &&
           before.ticks == after.ticks;
  }

  // One look at all that is taken to be alike; whether it is.
  bool follow_alike() {
    forms_.clear();
    auto const signals = static_cast<SignalId>(after_.signals.size());
    auto const forms_after = forms_of(after_, [](SignalId s) { return s; });
    auto const forms_before = forms_of(
        before_, [&](SignalId s) { return is_alike_[s] ? *counterparts_[s] : signals + s; });
    bool are_all = true;
    for (SignalId s = 0; s < is_alike_.size(); ++s) {
      if (!is_alike_[s] || before_.signals[s].is_input()) continue;
      auto const &was = before_.signals[s], &is = after_.signals[*counterparts_[s]];
      bool const is_latch = was.kind == model::SignalKind::latch;
      is_alike_[s] = forms_before[was.definition] == forms_after[is.definition] &&
                     (!is_latch || forms_before[was.reset] == forms_after[is.reset]);
      are_all = are_all && is_alike_[s];
    }
    return are_all;
  }

  // Expressions of one form have one number.
  template <class Told>
  std::vector<std::uint32_t> forms_of(Circuit const& circuit, Told told) {
    std::vector<std::uint32_t> numbers;
    numbers.reserve(circuit.expressions.size());
    for (auto const& node : circuit.expressions) {
      Form form{node.op, node.left, 0};
      if (node.op == Operator::signal) std::get<1>(form) = told(node.left);
      if (node.op >= Operator::negation) std::get<1>(form) = numbers[node.left];
      if (node.op > Operator::negation) std::get<2>(form) = numbers[node.right];
      auto const next = static_cast<std::uint32_t>(forms_.size());
      numbers.push_back(forms_.try_emplace(form, next).first->second);
    }
    return numbers;
  }

  Circuit const &before_, &after_;
  Counterparts<SignalId> const& counterparts_;
  std::vector<bool> is_alike_;  // by signal before
  std::map<Form, std::uint32_t> forms_;
};

}  // namespace

JointCircuit joined(Circuit const& before, Circuit const& after,
                    Counterparts<SignalId> const& counterparts) {
  JointCircuit joint;
  auto& circuit = joint.circuit;
  for (SignalId s = 0; s < after.signals.size(); ++s) joint.after.push_back(s);
  Likeness const likeness(before, after, counterparts);
  auto next = static_cast<SignalId>(after.signals.size());
  for (SignalId s = 0; s < before.signals.size(); ++s) {
    bool const is_shared =
        likeness.is_alike(s) && before.signals[s].kind != model::SignalKind::wire;
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
