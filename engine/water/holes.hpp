#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// D(x) of model section 2: side steps from `c` to the nearest cell with a hole below it, through
// cells that water may enter and that hold no source; no_hole past Rule::hole_search. Contract:
// water may enter `c`, and it holds no source.
inline constexpr int no_hole = 255;
int hole_distance(Moment const&, Cell c);

// A hole below: water may enter the cell under `c`. Every cell outside an open drawing has one.
bool has_hole_below(Moment const&, Cell c);

}  // namespace leat::water
