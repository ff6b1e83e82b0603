#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// The current at a cell: an integer vector, x east and y south (model section 3, "Current").
struct Current {
  int x = 0, y = 0;
  bool operator==(Current const&) const = default;
};

// How much stronger the water is at `c` than at its neighbour `n`, or than the water that stands
// one cell lower there, where the gradient looks through. `Water` says, as a Moment does, what is
// wet, how strong, and what cells are made of.
template <class Water>
int gradient(Water const& now, Cell c, Cell n) {
  auto const own = now.strength(c);
  if (now.is_wet(n)) return own - now.strength(n);
  auto const below = now.grid().below(n);
  if (!now.arrangement[n].shows_slope || !now.is_wet(below)) return 0;
  return own - now.strength(below) + now.arrangement.practice()[model::Rule::source_strength];
}

// Zero where the cell is dry.
template <class Water>
Current current_in(Water const& now, Cell c) {
  if (!now.is_wet(c)) return {};
  auto const towards = [&](model::Side side) {
    return gradient(now, c, now.grid().beside(c, side));
  };
  return {towards(model::Side::east) - towards(model::Side::west),
          towards(model::Side::south) - towards(model::Side::north)};
}

Current current_at(Moment const&, Cell c);

}  // namespace leat::water
