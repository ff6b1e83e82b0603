#pragma once
#include "engine/water/settle.hpp"

namespace leat::bench {

// The yardstick: what one would write in an afternoon. One arrangement, cell by cell, with a list
// of the cells near the last changes, distances to holes found once by a breadth-first search from
// all holes, and no bit tricks.
water::Settled plain_search(model::Arrangement const&);

}  // namespace leat::bench
