#pragma once
#include <utility>
#include <vector>

#include "engine/works/conditions.hpp"
#include "engine/works/islands.hpp"

namespace leat::works {

// A signal, and whether it goes on.
using Change = std::pair<model::SignalId, bool>;

// The flips of inputs that can change a signal so: the change itself where that is of an input; of
// a wire those that do so from some combination (see islands_of, whose parts take wires for
// levers). Ascending by level.
//
// Idea: an input changes a wire where the wire's function differs between its two values, and which
// way says which of the two is on there. Combinations that cannot come about are left out; where
// memory stands in between more are counted, never fewer. Cost: a few operations of the diagram for
// each input of the wire. Where it runs out the change is left as it is. Contract: the
// conditions follow from the signal; a wire follows from inputs alone.
std::vector<Change> flips_that_bring(Change const&, model::Circuit const& plant, Conditions&);

// The change of another copy of a part that is the same to the part as this one of the first copy.
// Contract: it is of a signal of the first copy.
Change change_in(Copy const&, Copy const& first, Change const&);

}  // namespace leat::works
