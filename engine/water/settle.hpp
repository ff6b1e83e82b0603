#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

struct Settled {
  Field field;
  int steps = 0;           // water steps until a step changed nothing
  bool is_settled = true;  // false: it still moved when the bound was reached
};

// The fresh field: from dry, until a step changes nothing.
//
// It always settles. Order the states dry < flows by strength < falling < source. From a dry start
// no cell ever goes down: intrinsic never falls when its neighbours rise, a wet cell keeps its
// intrinsic state, and a source stays. So each cell changes at most as often as there are states,
// and the number of steps is bounded by cells times states; in practice it is the longest way the
// water runs.
//
// No water is stepped more often than this: cells times the states a cell can pass through.
int most_steps(model::Arrangement const&);

// settle_reference repeats `step`, which looks at every cell; settle_fresh is quicker.
Settled settle_reference(model::Arrangement const&);
Settled settle_fresh(model::Arrangement const&);

// The field that a settled one turns into after the arrangement has changed. Water can then go down
// as well as up, and no argument shows that it must rest: it is stepped at most as often as a fresh
// field could need.
Settled settle_switched(model::Arrangement const& before, Field const&,
                        model::Arrangement const& after, bool was_settled = true);
Settled settle_switched_reference(model::Arrangement const& before, Field const&,
                                  model::Arrangement const& after);

}  // namespace leat::water
