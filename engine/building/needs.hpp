#pragma once
#include <vector>

#include "engine/model/design.hpp"

// What has to be there for a design to work, counted.
namespace leat::building {

using model::Cell;

// Whether neither water nor bodies can ever be in cells of this fill, and nothing switches them.
bool is_ever_solid(model::Design const&, model::FillId);

// Whether a cell of the drawing matters: it is not ever solid, or it holds what is: one of its six
// neighbours is not ever solid. No rule of water or bodies reads any other cell, so those can be
// left as they are.
bool is_needed(model::Design const&, Cell);

struct Needs {
  // By level, then by FillId.
  std::vector<std::vector<std::size_t>> drawn, needed;
  // Cells around a drawing whose outside is rock that hold what is inside: below it first, then
  // beside each level, then above it.
  std::vector<std::size_t> around;
};

// Cost: one look at every cell and its neighbours.
Needs needs_of(model::Design const&);

// The inputs and memory that the switched cells follow from, ascending: something has to be built
// for each. Other signals work nothing here, and wires are the wiring itself.
std::vector<model::SignalId> parts_of(model::Design const&);

}  // namespace leat::building
