#pragma once
#include "engine/model/circuit.hpp"

// Circuits put together in code, so that the logic is tested without the language.
namespace leat::wired {

using model::ExpressionId;
using model::SignalId;

class Circuit {
 public:
  SignalId input(model::SignalKind kind = model::SignalKind::lever, int ticks = 0);
  SignalId wire(ExpressionId followed);  // by inputs, memory and wires that were added before
  SignalId latch(ExpressionId set, ExpressionId reset);
  SignalId toggle(ExpressionId trigger);
  SignalId delay(ExpressionId fed, int ticks);
  // What a memory element looks at, given later than itself: the way to close a loop.
  void feed(SignalId memory, ExpressionId definition);

  ExpressionId of(SignalId);
  ExpressionId constant(bool);
  ExpressionId negation(ExpressionId);
  ExpressionId conjunction(ExpressionId, ExpressionId);
  ExpressionId combined(model::Operator, ExpressionId, ExpressionId);

  model::Circuit const& built() const { return circuit_; }

 private:
  SignalId add(model::Signal);
  model::Circuit circuit_;
};

// A few inputs and memory elements that look at each other; some of them oscillate.
model::Circuit random_circuit(unsigned seed);

}  // namespace leat::wired
