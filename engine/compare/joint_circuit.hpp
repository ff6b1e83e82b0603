#pragma once
#include <vector>

#include "engine/compare/matching.hpp"
#include "engine/model/circuit.hpp"

namespace leat::compare {

// Two circuits side by side as one, with the inputs they share driven together: what a player does
// is done to both.
struct JointCircuit {
  model::Circuit circuit;
  std::vector<model::SignalId> before, after;  // by own id, the id in the joint circuit
  std::vector<model::ExpressionId> before_expressions, after_expressions;
};

// Inputs with a counterpart that is an input too are shared; they start as after. Wires and memory
// of the two stay apart, whatever their names, for what they do is what is to be compared. What
// either circuit never lets come about never does in the joint one. Cost: linear.
JointCircuit joined(model::Circuit const& before, model::Circuit const& after,
                    Counterparts<model::SignalId> const& counterparts);

}  // namespace leat::compare
