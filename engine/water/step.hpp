#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// The state of one inside cell after one water step, from the field before it (model section 2,
// "One water step").
State next_state(Moment const&, Cell c);

// All cells together, as the model says it: the reference way. Cost: every cell, every step.
Field step(model::Arrangement const&, Field const&);

// The field before any water has moved.
Field dry_field(model::Arrangement const&);

}  // namespace leat::water
