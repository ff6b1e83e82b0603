#pragma once
#include <cstdint>
#include <vector>

#include "engine/logic/program.hpp"

namespace leat::logic {

// The settled semantics of a circuit with memory (model section 4). After one input has changed,
// wires follow in dependency order; then all memory elements whose trigger says so change together:
// a latch is on when set, else off when reset; a toggle flips when its trigger has risen since the
// round before; a delay takes over its input. This repeats until a round changes no memory: quiet.
// What never gets quiet oscillates; what is not seen to do either within most_rounds is not known.
//
// A settled state is told by inputs and memory alone: what a toggle's trigger was is the trigger's
// value there.

// The values of inputs and memory elements, in the order of Machine::variables; first one lowest.
using Code = std::uint64_t;

// What oscillates after an event: the memory elements that keep changing, in the order of their
// ids.
struct Oscillation {
  std::vector<model::SignalId> loop;
  int period = 0;  // rounds
};

class Machine {
 public:
  static constexpr std::size_t most_variables = 64;
  // Contract: at most most_variables inputs and memory elements. The circuit must outlive the
  // machine.
  explicit Machine(model::Circuit const&);

  model::Circuit const& circuit() const { return *circuit_; }
  Program const& program() const { return program_; }
  // The rounds that are run for one settling: 2^20, fewer where a round is long (about a second in
  // all, 4096 at least). A counter of 18 bits in a loop is still told as the oscillation it is.
  std::size_t most_rounds() const;
  // Inputs first, then memory elements, each in the order of their ids.
  std::vector<model::SignalId> const& variables() const { return variables_; }
  std::size_t input_count() const { return input_count_; }

  // Every signal's value in a settled state.
  std::vector<bool> values(Code) const;

  struct Settled {
    Code code = 0;
    bool is_quiet = true;
    bool is_known = true;     // false: not quiet so far, and what becomes of it is not known
    Oscillation oscillation;  // where it is known not to get quiet
    std::size_t rounds = 0;   // that were run
  };
  // All variables as built, settled within so many rounds, and within most_rounds(). Toggles stay
  // as they start: nothing has gone on yet.
  Settled as_built(std::size_t within_rounds = any) const;
  // From a settled state, after input `event` (an index below input_count) has flipped.
  Settled after(Code, std::size_t event, std::size_t within_rounds = any) const;

  // The same for up to 64 settled states side by side: to[i] follows from[i]. Lanes that did not
  // get quiet within the common rounds are set in the result and hold no state; `after` tells what
  // they do.
  Lanes after(std::vector<Code> const& from, std::size_t event, std::vector<Code>& to) const;

 private:
  static constexpr auto any = ~std::size_t{0};
  struct Bench;
  Settled settle(Bench&, std::size_t within_rounds) const;
  std::vector<model::SignalId> memory_in(Code changing) const;

  model::Circuit const* circuit_;
  Program program_;
  std::vector<model::SignalId> variables_;
  std::size_t input_count_ = 0;
};

}  // namespace leat::logic
