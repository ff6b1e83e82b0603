#pragma once
#include <optional>

#include "engine/body/surroundings.hpp"

namespace leat::body {

// How a body's speed along one way changes each tick (model section 7): v' = v * kept + won, in
// cells a tick.
struct Pace {
  double won = 0, kept = 0;
};

// The pace of a body that the water at a feet cell pushes to the side where another cell lies, or
// lies higher; of a diagonal push only what goes that way. Where nothing pushes: that of a body
// which drifts on.
Pace pushed(Surroundings const&, Cell from, Cell to);
// Upward in water: the mean stroke less gravity.
Pace risen(Surroundings const&);
// Down in air, and down under water.
Pace fallen(Surroundings const&);
Pace sunk(Surroundings const&);

// No water takes a body faster, in cells a tick: the highest of what the strongest push, a stroke
// every tick and sinking tend to.
double fastest_in_water(model::Practice const&);

// Ticks from standstill until it has gone so far, whole; none if it never does, or takes longer
// than is worth telling.
std::optional<int> ticks_for(Pace, double cells);

// The speed that it tends to, in cells a tick; 0 if it does not move on.
double terminal_speed(Pace);

}  // namespace leat::body
