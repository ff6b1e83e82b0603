#pragma once
#include <optional>
#include <vector>

#include "engine/logic/diagram.hpp"
#include "engine/model/circuit.hpp"

namespace leat::logic {

// What wires and expressions of a circuit are, all quiet, where its inputs and memory are certain
// functions.
//
// Idea: a chain of one operator whose steps nothing else uses is one operation of many operands.
// They are taken the lowest first, so that each adds to what lies above it: a priority among n
// signals makes some n nodes, and not the square of it. Cost: each expression that is asked for
// once, and those that wires follow.
class Evaluation {
 public:
  using Function = Diagram::Function;

  // `of_signal`: by signal; those of wires are found. Circuit and diagram must outlive it.
  Evaluation(model::Circuit const&, Diagram&, std::vector<Function> of_signal);

  Function of(model::ExpressionId);
  std::vector<Function> const& of_signals() const { return of_signal_; }

 private:
  void count_uses();
  bool is_step(model::ExpressionId, model::Operator of_chain) const;
  std::vector<model::ExpressionId> operands_of(model::ExpressionId) const;
  Function computed(model::ExpressionNode const&, std::vector<model::ExpressionId> const& operands);
  Function folded(model::Operator, std::vector<model::ExpressionId> const& operands);

  model::Circuit const& circuit_;
  Diagram& diagram_;
  std::vector<Function> of_signal_;
  std::vector<std::optional<Function>> known_;  // by expression
  std::vector<std::uint8_t> uses_;              // by expression: none, one, several
};

}  // namespace leat::logic
