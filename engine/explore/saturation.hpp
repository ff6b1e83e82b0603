#pragma once
#include <vector>

#include "engine/logic/diagram.hpp"

namespace leat::explore {

// A part of the changes that events make, as a relation over levels 2p (before) and 2p + 1 (after).
// Contract: before tells after, and a variable whose level after is not tested stays as it is.
struct Transitions {
  logic::Diagram::Function relation;
};

// All that can be reached from `start` by any number of transitions, taken in any order.
//
// Idea: saturation (G. Ciardo, G. Luettgen, R. Siminiceanu, "Saturation: an efficient iteration
// strategy for symbolic state-space generation", TACAS 2001). Transitions are sorted by the highest
// variable they touch. A set is closed under the lowest ones first, below every node alike; then
// those one level higher are taken once, the result is closed under the lower ones again, and so on
// until nothing is new. What was closed below one node is remembered for all sets that share it: so
// a counter of m bits takes about m steps where breadth first takes 2^m.
//
// Where the diagram runs out the result means nothing.
logic::Diagram::Function saturated(logic::Diagram&, logic::Diagram::Function start,
                                   std::vector<Transitions>);

}  // namespace leat::explore
