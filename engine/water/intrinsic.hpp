#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// Side neighbours of `c` that are sources.
int source_sides(Moment const&, Cell c);

// What the water around it makes of cell `c`: model section 2, `intrinsic(c)`, its three rules in
// order.
State intrinsic(Moment const&, Cell c);

}  // namespace leat::water
