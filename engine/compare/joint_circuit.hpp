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

// Inputs with a counterpart that is an input too are shared; they start as after. So is memory that
// starts alike and follows alike from what is shared, and then does the same for ever (induction
// over the events; signal correspondence, C. A. J. van Eijk 1998, from memory, by the form of the
// expressions): where little was changed the joint circuit is little more than one of them. Wires
// and other memory of the two stay apart, whatever their names, for what they do is what is to be
// compared. What either circuit never lets come about never does in the joint one. Cost: linear in
// the circuits, again for as long as less turns out to be alike.
JointCircuit joined(model::Circuit const& before, model::Circuit const& after,
                    Counterparts<model::SignalId> const& counterparts);

}  // namespace leat::compare
