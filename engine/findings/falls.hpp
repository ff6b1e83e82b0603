#pragma once
#include <vector>

#include "engine/findings/sighting.hpp"

namespace leat::findings {

// Where a body comes down out of the air.
struct Landing {
  std::uint32_t position = 0;                  // index into the route graph
  int fallen = 0;                              // cells, the longest such fall that ends here
  model::Side carried_to = model::Side::none;  // of that fall, while it came straight down
  bool in_water = false;
};

// The landings that are longer than the body's safe fall, one for each position and side. Positions
// count fallen cells only as far as the moves need them, so the full length is summed here along
// the falls, from the highest position downward. Cost: one sort of the positions and one visit a
// step.
std::vector<Landing> long_landings(Passage const&);

}  // namespace leat::findings
