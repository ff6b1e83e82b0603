#pragma once
#include <cstdint>

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

// Delays behind each other, the first fed with whether what the last one and another one hold
// differs: a shift register with linear feedback. It starts with one stage on; or, with a lever,
// with none, and shifts once the lever turns over what is fed.
enum class Start : std::uint8_t { one_on, by_lever };
model::Circuit shift_register(int stages, int tap, Start = Start::one_on);

// A few inputs and memory elements that look at each other; some of them oscillate.
model::Circuit random_circuit(unsigned seed);

}  // namespace leat::wired
