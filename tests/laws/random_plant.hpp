#pragma once
#include "engine/judge.hpp"

namespace leat::laws {

// A plant put together from random junctions, some of them alike, turned and mirrored, one beside
// the other in rock; the gates of each follow expressions over the plant's levers (and, where
// asked, a latch), some through wires, and some outlets are joined to inlets, at times round.
model::Design random_plant(unsigned seed, bool has_memory = false);

// Random junctions in one drawing, wall to wall, with passages broken through: one island. Each has
// two levers of its own, 6 to 10 in all; with memory 4 to 6, and latches that some gates hang on.
model::Design random_row(unsigned seed, bool has_memory = false);

}  // namespace leat::laws
