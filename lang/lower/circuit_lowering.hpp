#pragma once
#include <optional>
#include <unordered_map>
#include <vector>

#include "engine/model/circuit.hpp"
#include "lang/check/meaning.hpp"

namespace leat::lower {

// Turns expressions over names into the engine's arena. Each written expression, and each signal as
// an operand, is put there once, however many conditions use it.
class CircuitLowering {
 public:
  // Begins with all signals of the file and the definitions of its wires.
  explicit CircuitLowering(check::Meaning const&);

  model::ExpressionId lower(syntax::Expression const&);
  // None where the condition always holds.
  std::optional<model::ExpressionId> lower(check::Condition const&);
  model::Circuit const& circuit() const { return circuit_; }

 private:
  model::ExpressionId operand(model::SignalId);
  model::ExpressionId negated(model::ExpressionId);
  model::ExpressionId any_of(check::Earlier const&);
  model::ExpressionId chained(model::Operator, std::vector<model::ExpressionId> const&);

  check::Names const& names_;
  model::Circuit circuit_;
  std::vector<std::optional<model::ExpressionId>> operands_;  // by signal
  std::unordered_map<syntax::Expression const*, model::ExpressionId> known_;
  // For each list of earlier conditions: the first one, the first or the second, and so on.
  std::unordered_map<void const*, std::vector<model::ExpressionId>> any_of_first_;
};

}  // namespace leat::lower
