#pragma once
#include <random>

#include "engine/judge.hpp"

namespace leat::laws {

// Small random junctions in which something happens, the same for the same seed: storeys of rock
// with holes in them and rooms between, sources high up and in pairs, signs, grates, switched
// cells, pits of water, inlets near the water and outlets away from it. One in four has an open
// outside, and one in three figures of its own.
//
// `footprint` is that of every profile: 1 with heights 1 and 2 and a body that does not float,
// or 2.
model::Design random_junction(unsigned seed, int footprint = 1);

// The same design with its switched fills on six levers, one after the other.
model::Design with_many_levers(model::Design, unsigned seed);

// What the four ways the two levers can stand make of the cells, each once, in the order of rows,
// and the arrangements that these are.
std::vector<explore::Setting> settings_of(model::Design const&);
std::vector<model::Arrangement> arrangements_of(model::Design const&);

}  // namespace leat::laws
