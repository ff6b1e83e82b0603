#pragma once
#include "engine/works/conditions.hpp"

namespace leat::works {

// A list of flips in which wires stand for the levers below them (see islands_of), as flips of
// inputs, from as built on: for a wire the fewest that make it change, so that it does at the last
// of them. Where promises leave such an order they are done in one that keeps them. Contract: the
// conditions follow from every signal.
std::vector<model::SignalId> lever_flips(model::Circuit const& plant, Conditions&,
                                         std::vector<model::SignalId> const& flips);

}  // namespace leat::works
