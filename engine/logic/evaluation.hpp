#pragma once
#include <optional>
#include <vector>

#include "engine/logic/diagram.hpp"
#include "engine/model/circuit.hpp"

namespace leat::logic {

// What wires and expressions of a circuit are, all quiet, where its inputs and memory are certain
// functions. Cost: each expression that is asked for once, and those that wires follow.
class Evaluation {
 public:
  using Function = Diagram::Function;

  // `of_signal`: by signal; those of wires are found. Circuit and diagram must outlive it.
  Evaluation(model::Circuit const&, Diagram&, std::vector<Function> of_signal);

  Function of(model::ExpressionId);
  std::vector<Function> const& of_signals() const { return of_signal_; }

 private:
  Function computed(model::ExpressionNode const&);

  model::Circuit const& circuit_;
  Diagram& diagram_;
  std::vector<Function> of_signal_;
  std::vector<std::optional<Function>> known_;  // by expression
};

}  // namespace leat::logic
