#pragma once
#include <vector>

#include "engine/logic/diagram.hpp"
#include "engine/logic/program.hpp"

namespace leat::logic {

// The settled semantics of a circuit (as Machine has them, round by round) for all its states at
// once: what each variable holds after an event, as a function of the settled state before it.
// There is no limit to the number of variables but the diagram's nodes.
//
// Order of the variables: depth first from memory elements that no other looks at to what they look
// at, so that what drives stands below what is driven, and inputs lowest. Levels 2p and 2p + 1
// belong to the variable at place p, before and after an event.
class SymbolicMachine {
 public:
  using Function = Diagram::Function;

  // Circuit and diagram must outlive it.
  SymbolicMachine(model::Circuit const&, Diagram&);

  // As Machine has them: inputs, then memory elements, each in the order of their ids.
  std::vector<model::SignalId> const& variables() const { return variables_; }
  std::size_t input_count() const { return input_count_; }
  // The place in the order of each variable.
  std::vector<Diagram::Level> const& places() const { return places_; }

  struct Outcome {
    std::vector<Function> after;  // by variable; means something where it got quiet
    // Settled states after which it is proved never to get quiet, and those for which the rounds
    // ran out before it was known.
    Function oscillating = Diagram::never, unknown = Diagram::never;
  };
  Outcome after(std::size_t event, std::size_t most_rounds);
  // From the variables as built; all functions are constants.
  Outcome as_built(std::size_t most_rounds);

 private:
  class Order;
  class Rounds;
  Function held(std::size_t variable) { return diagram_->variable(2 * places_[variable]); }

  model::Circuit const* circuit_;
  Diagram* diagram_;
  Program program_;
  std::vector<model::SignalId> variables_;
  std::size_t input_count_ = 0;
  std::vector<Diagram::Level> places_;
};

}  // namespace leat::logic
