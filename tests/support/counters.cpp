#include "tests/support/counters.hpp"

#include <random>

#include "tests/support/wired.hpp"

namespace leat::wired {

using model::ExpressionId;
using model::Operator;
using model::SignalId;
using model::SignalKind;

namespace {

// Signals first, then what they look at, so that loops close.
class Counter {
 public:
  SignalId add(SignalKind kind) {
    circuit_.signals.push_back({kind, false, 0, 0, 0});
    return static_cast<SignalId>(circuit_.signals.size() - 1);
  }
  ExpressionId of(SignalId signal) { return circuit_.add({Operator::signal, signal, 0}); }
  ExpressionId negation(ExpressionId operand) {
    return circuit_.add({Operator::negation, operand, 0});
  }
  ExpressionId both(ExpressionId one, ExpressionId other) {
    return circuit_.add({Operator::conjunction, one, other});
  }
  ExpressionId differ(ExpressionId one, ExpressionId other) {
    return circuit_.add({Operator::parity, one, other});
  }
  // The latch follows a value while it is open.
  void follow(SignalId latch, ExpressionId value, ExpressionId is_open) {
    circuit_.signals[latch].definition = both(is_open, value);
    circuit_.signals[latch].reset = both(is_open, negation(value));
  }
  void trigger(SignalId toggle, ExpressionId by) { circuit_.signals[toggle].definition = by; }
  void start_on(SignalId signal) { circuit_.signals[signal].starts_on = true; }
  model::Circuit const& built() const { return circuit_; }

 private:
  model::Circuit circuit_;
};

Counter ring_of(int stages, bool is_twisted) {
  Counter counter;
  auto const clock = counter.of(counter.add(SignalKind::lever));
  auto const off = counter.negation(clock);
  std::vector<SignalId> masters, slaves;
  for (int i = 0; i < stages; ++i) {
    masters.push_back(counter.add(SignalKind::latch));
    slaves.push_back(counter.add(SignalKind::latch));
  }
  auto before = counter.of(slaves.back());
  if (is_twisted) before = counter.negation(before);
  for (std::size_t i = 0; i < masters.size(); ++i) {
    counter.follow(masters[i], before, off);
    counter.follow(slaves[i], counter.of(masters[i]), clock);
    before = counter.of(slaves[i]);
  }
  if (!is_twisted) counter.start_on(slaves.front());
  return counter;
}

}  // namespace

model::Circuit latches(int count) {
  Circuit circuit;
  std::vector<SignalId> levers;
  for (int i = 0; i < count; ++i) levers.push_back(circuit.input());
  for (auto lever : levers) {
    auto const on = circuit.of(lever);
    circuit.latch(on, circuit.negation(on));
  }
  return circuit.built();
}

model::Circuit latches_of_pairs(int count) {
  Circuit circuit;
  std::vector<ExpressionId> levers;
  for (int i = 0; i < count; ++i) levers.push_back(circuit.of(circuit.input()));
  for (std::size_t i = 0; i < levers.size(); ++i) {
    auto const one = levers[i], other = levers[(i + 1) % levers.size()];
    auto const none = circuit.negation(circuit.combined(Operator::disjunction, one, other));
    circuit.latch(circuit.conjunction(one, other), none);
  }
  return circuit.built();
}

model::Circuit latch_of_all(int levers) {
  Circuit circuit;
  auto all = circuit.of(circuit.input()), any = all;
  for (int i = 1; i < levers; ++i) {
    auto const lever = circuit.of(circuit.input());
    all = circuit.conjunction(all, lever);
    any = circuit.combined(Operator::disjunction, any, lever);
  }
  circuit.latch(all, circuit.negation(any));
  return circuit.built();
}

model::Circuit ripple(int toggles) {
  Circuit circuit;
  auto trigger = circuit.of(circuit.input());
  for (int i = 0; i < toggles; ++i) trigger = circuit.negation(circuit.of(circuit.toggle(trigger)));
  return circuit.built();
}

model::Circuit ring(int stages) { return ring_of(stages, false).built(); }

model::Circuit twisted_ring(int stages) { return ring_of(stages, true).built(); }

// At an even count of bits that are on the lowest bit changes; else the one above the lowest that
// is on, or the highest where that is the highest itself. Which one it is to be is held while the
// clock is on, so that one rise changes one bit.
model::Circuit gray_counter(int bits) {
  Counter counter;
  auto const clock = counter.of(counter.add(SignalKind::lever));
  auto const off = counter.negation(clock);
  std::vector<SignalId> toggles, chosen;
  for (int i = 0; i < bits; ++i) toggles.push_back(counter.add(SignalKind::toggle));
  for (int i = 0; i < bits; ++i) chosen.push_back(counter.add(SignalKind::latch));
  auto is_odd = counter.of(toggles.front());
  for (std::size_t i = 1; i < toggles.size(); ++i)
    is_odd = counter.differ(is_odd, counter.of(toggles[i]));
  auto all_lower_off = is_odd;
  counter.follow(chosen.front(), counter.negation(is_odd), off);
  for (std::size_t i = 1; i < toggles.size(); ++i) {
    auto const below = counter.of(toggles[i - 1]);
    bool const is_highest = i + 1 == toggles.size();
    counter.follow(chosen[i], is_highest ? all_lower_off : counter.both(all_lower_off, below), off);
    all_lower_off = counter.both(all_lower_off, counter.negation(below));
  }
  for (std::size_t i = 0; i < toggles.size(); ++i)
    counter.trigger(toggles[i], counter.both(clock, counter.of(chosen[i])));
  return counter.built();
}

model::Circuit beside(model::Circuit one, model::Circuit const& other) {
  auto const signals = static_cast<SignalId>(one.signals.size());
  auto const expressions = static_cast<ExpressionId>(one.expressions.size());
  for (auto node : other.expressions) {
    if (node.op == Operator::signal) node.left += signals;
    if (node.op > Operator::signal) node.left += expressions, node.right += expressions;
    one.add(node);
  }
  for (auto signal : other.signals) {
    signal.definition += expressions;
    signal.reset += expressions;
    one.signals.push_back(signal);
  }
  for (auto wire : other.wire_order) one.wire_order.push_back(signals + wire);
  return one;
}

model::Circuit random_circuit_with_wires(unsigned seed) {
  std::mt19937 dice(seed);
  auto const pick = [&](std::size_t n) { return static_cast<std::uint32_t>(dice() % n); };
  model::Circuit circuit;
  auto const inputs = 1 + pick(3), memories = 1 + pick(5), wires = 1 + pick(4);
  constexpr SignalKind kinds[] = {SignalKind::latch, SignalKind::toggle, SignalKind::delay};
  for (unsigned i = 0; i < inputs; ++i) circuit.signals.push_back({});
  for (unsigned m = 0; m < memories; ++m)
    circuit.signals.push_back({kinds[pick(3)], false, 0, 0, 2});
  for (auto& signal : circuit.signals) signal.starts_on = pick(2) == 0;
  auto const any = [&](std::size_t known) {
    constexpr Operator binary[] = {Operator::conjunction, Operator::disjunction, Operator::parity};
    auto const one = circuit.add({Operator::signal, pick(known), 0});
    auto const other = circuit.add({Operator::signal, pick(known), 0});
    auto const both = circuit.add({binary[pick(3)], one, other});
    return pick(3) == 0 ? circuit.add({Operator::negation, both, 0}) : both;
  };
  for (unsigned w = 0; w < wires; ++w) {
    auto const definition = any(circuit.signals.size());
    circuit.wire_order.push_back(static_cast<SignalId>(circuit.signals.size()));
    circuit.signals.push_back({SignalKind::wire, false, definition, 0, 0});
  }
  for (std::size_t m = inputs; m < inputs + memories; ++m) {
    circuit.signals[m].definition = any(circuit.signals.size());
    circuit.signals[m].reset = any(circuit.signals.size());
  }
  return circuit;
}

}  // namespace leat::wired
