#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// The state of one inside cell after one water step, from the field before it (model section 2,
// "One water step"). Contract: that field holds no water where water may not enter.
State next_state(Moment const&, Cell c);

// All cells together, as the model says it: the reference way. The field may come from another
// arrangement: cells that water may no longer enter lose it at once, before the step. Cost: every
// cell, every step.
Field step(model::Arrangement const&, Field before);

// The field before any water has moved.
Field dry_field(model::Arrangement const&);

}  // namespace leat::water
