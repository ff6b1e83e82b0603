#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

struct Settled {
  Field field;
  int steps = 0;  // water steps until a step changed nothing
};

// The fresh field: from dry, until a step changes nothing.
//
// It always settles. Order the states dry < flows by strength < falling < source. From a dry start
// no cell ever goes down: intrinsic never falls when its neighbours rise, a wet cell keeps its
// intrinsic state, and a source stays. So each cell changes at most as often as there are states,
// and the number of steps is bounded by cells times states; in practice it is the longest way the
// water runs.
//
// settle_reference repeats `step`, which looks at every cell. settle_fresh looks again only where
// the last step's changes can matter (see influence in settle.cpp), and gives the same fields step
// by step.
Settled settle_reference(model::Arrangement const&);
Settled settle_fresh(model::Arrangement const&);

}  // namespace leat::water
