#pragma once
#include <vector>

#include "engine/water/current.hpp"
#include "engine/water/field.hpp"

namespace leat::water {

// One wet cell of a settled field, with all that can be said of it.
struct WetCell {
  Cell cell = model::no_cell;
  State state = dry;
  bool is_placed = false;  // a source: drawn as one, not formed
  int strength = 0;
  Current current;
  bool spills = false;  // sends water out of an open drawing
};

// The wet cells inside the drawing, ascending. Cost: one look at every cell, one current for each
// wet one.
std::vector<WetCell> survey(Moment const&);

}  // namespace leat::water
