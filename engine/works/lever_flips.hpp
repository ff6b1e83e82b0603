#pragma once
#include <optional>

#include "engine/works/judge_works.hpp"

namespace leat::works {

// A list of flips in which wires stand for the levers below them (see islands_of), as flips of
// inputs, from as built on: for a wire the fewest that make it change, so that it does at the last
// of them. Where promises leave such an order they are done in one that keeps them. Contract: the
// conditions follow from every signal.
std::vector<model::SignalId> lever_flips(model::Circuit const& plant, Conditions&,
                                         std::vector<model::SignalId> const& flips);

// The inputs to be flipped, one after the other, from as built to a combination, by the order of
// their levels or, where something is promised never to come about, in one that keeps it all the
// way. None where memory would have to be led there first, and where no such order is found: one
// may need flips that are taken back, and of more than twelve not all orders are looked through.
std::optional<std::vector<model::SignalId>> flips_to(model::Circuit const& plant, Conditions const&,
                                                     Instance const&);

}  // namespace leat::works
