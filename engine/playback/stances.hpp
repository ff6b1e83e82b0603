#pragma once
#include "engine/body/surroundings.hpp"
#include "engine/playback/playback.hpp"

namespace leat::playback {

// What a body does at every position that it can get to from anywhere in the drawing, as a list
// from Spot::number to the number of a stance. Cost: one route graph.
Patch stances_in(body::Surroundings const&, body::OutletCells const&, Numbered<Stance>&);

// What becomes of a body from an inlet.
Fate fate_of(body::Surroundings const&, model::Port const& inlet, body::OutletCells const&);

}  // namespace leat::playback
