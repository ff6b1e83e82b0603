#include "tests/support/wired.hpp"

#include <random>

namespace leat::wired {

using model::Operator;
using model::SignalKind;

SignalId Circuit::add(model::Signal signal) {
  circuit_.signals.push_back(signal);
  return static_cast<SignalId>(circuit_.signals.size() - 1);
}

SignalId Circuit::input(SignalKind kind, int ticks) { return add({kind, false, 0, 0, ticks}); }

SignalId Circuit::wire(ExpressionId followed) {
  circuit_.wire_order.push_back(add({SignalKind::wire, false, followed, 0, 0}));
  return circuit_.wire_order.back();
}

SignalId Circuit::latch(ExpressionId set, ExpressionId reset) {
  return add({SignalKind::latch, false, set, reset, 0});
}

SignalId Circuit::toggle(ExpressionId trigger) {
  return add({SignalKind::toggle, false, trigger, 0, 0});
}

SignalId Circuit::delay(ExpressionId fed, int ticks) {
  return add({SignalKind::delay, false, fed, 0, ticks});
}

void Circuit::feed(SignalId memory, ExpressionId definition) {
  circuit_.signals[memory].definition = definition;
}

ExpressionId Circuit::of(SignalId signal) { return circuit_.add({Operator::signal, signal, 0}); }

ExpressionId Circuit::constant(bool value) {
  return circuit_.add({Operator::constant, value ? 1u : 0u, 0});
}

ExpressionId Circuit::negation(ExpressionId operand) {
  return circuit_.add({Operator::negation, operand, 0});
}

ExpressionId Circuit::conjunction(ExpressionId left, ExpressionId right) {
  return combined(Operator::conjunction, left, right);
}

ExpressionId Circuit::combined(Operator op, ExpressionId left, ExpressionId right) {
  return circuit_.add({op, left, right});
}

model::Circuit shift_register(int stages, int tap, Start start) {
  Circuit circuit;
  bool const is_by_lever = start == Start::by_lever;
  auto const lever = is_by_lever ? circuit.of(circuit.input()) : circuit.constant(false);
  std::vector<SignalId> delays;
  for (int i = 0; i < stages; ++i)
    delays.push_back(circuit.delay(delays.empty() ? lever : circuit.of(delays.back()), 1));
  auto const differs =
      circuit.combined(Operator::parity, circuit.of(delays[static_cast<std::size_t>(tap) - 1]),
                       circuit.of(delays.back()));
  circuit.feed(delays.front(), circuit.combined(Operator::parity, differs, lever));
  auto built = circuit.built();
  built.signals[delays.front()].starts_on = !is_by_lever;
  return built;
}

model::Circuit random_circuit(unsigned seed) {
  std::mt19937 dice(seed);
  auto const pick = [&](unsigned n) { return static_cast<unsigned>(dice() % n); };
  Circuit circuit;
  auto const inputs = 1 + pick(3), memories = 1 + pick(5);
  auto const any = [&] {
    auto const one = circuit.of(pick(inputs + memories)),
               other = circuit.of(pick(inputs + memories));
    constexpr Operator binary[] = {Operator::conjunction, Operator::disjunction, Operator::parity};
    auto const both = circuit.combined(binary[pick(3)], one, other);
    return pick(3) == 0 ? circuit.negation(both) : both;
  };
  for (unsigned i = 0; i < inputs; ++i) circuit.input();
  for (unsigned m = 0; m < memories; ++m) {
    auto const kind = pick(3);
    if (kind == 0) {
      auto const set = any();
      circuit.latch(set, any());
    } else if (kind == 1) {
      circuit.toggle(any());
    } else {
      circuit.delay(any(), 2);
    }
  }
  return circuit.built();
}

}  // namespace leat::wired
