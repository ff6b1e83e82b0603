#include "engine/water/current.hpp"

namespace leat::water {

namespace {

// How much stronger the water is at `c` than at its neighbour `n`, or than the water that stands
// one cell lower there, where the gradient looks through.
int gradient(Moment const& now, Cell c, Cell n) {
  auto const own = now.strength(c);
  if (now.is_wet(n)) return own - now.strength(n);
  auto const below = now.grid().below(n);
  if (!now.arrangement[n].shows_slope || !now.is_wet(below)) return 0;
  return own - now.strength(below) + now.arrangement.practice()[model::Rule::source_strength];
}

}  // namespace

Current current_at(Moment const& now, Cell c) {
  if (!now.is_wet(c)) return {};
  auto const& grid = now.grid();
  auto const east = gradient(now, c, grid.beside(c, model::Side::east));
  auto const west = gradient(now, c, grid.beside(c, model::Side::west));
  auto const south = gradient(now, c, grid.beside(c, model::Side::south));
  auto const north = gradient(now, c, grid.beside(c, model::Side::north));
  return {east - west, south - north};
}

}  // namespace leat::water
