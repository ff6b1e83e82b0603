#include "engine/water/spread.hpp"

#include <algorithm>
#include <cassert>

#include "engine/water/holes.hpp"
#include "engine/water/intrinsic.hpp"

namespace leat::water {

using model::Rule;
using model::Side;

bool spreads_sideways(Moment const& now, Cell n) {
  assert(now.is_wet(n));
  auto const below = now.grid().below(n);
  if (!now.is_source(n)) return !now.may_enter(below);
  bool const pours_below = now.may_enter(below) && !now.is_wet(below);
  return !pours_below || source_sides(now, n) >= now.arrangement.practice()[Rule::eager_makers];
}

bool offers(Moment const& now, Cell n, Side side) {
  auto const is_candidate = [&](Cell c) { return now.may_enter(c) && !now.is_source(c); };
  auto const asked = now.grid().beside(n, side);
  if (!is_candidate(asked) || !spreads_sideways(now, n)) return false;
  auto const asked_distance = hole_distance(now, asked);
  return std::none_of(model::sides.begin(), model::sides.end(), [&](Side other) {
    auto const rival = now.grid().beside(n, other);
    return is_candidate(rival) && hole_distance(now, rival) < asked_distance;
  });
}

bool spills(Moment const& now, Cell n) {
  if (!now.arrangement.outside_is_open() || !now.is_wet(n)) return false;
  auto const& grid = now.grid();
  if (!grid.is_inside(grid.below(n))) return true;
  if (now.strength(n) < 2) return false;
  return std::any_of(model::sides.begin(), model::sides.end(), [&](Side side) {
    return !grid.is_inside(grid.beside(n, side)) && offers(now, n, side);
  });
}

}  // namespace leat::water
