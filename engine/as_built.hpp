#pragma once
#include <vector>

#include "engine/model/design.hpp"

namespace leat {

// The value of each input and memory element in the design as built, once all is quiet; what starts
// without ever getting quiet stays as it starts, and so does what only other junctions depend on.
// Of wires nothing is told. Cost: one settling of the signals, nothing where there is no memory.
std::vector<bool> as_built(model::Design const&);

}  // namespace leat
