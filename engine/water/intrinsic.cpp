#include "engine/water/intrinsic.hpp"

#include <algorithm>

namespace leat::water {

using model::Rule;
using model::sides;

int source_sides(Moment const& now, Cell c) {
  return static_cast<int>(std::count_if(sides.begin(), sides.end(), [&](model::Side side) {
    return now.is_source(now.grid().beside(c, side));
  }));
}

namespace {

bool bears_a_source(Moment const& now, Cell c) {
  return now.arrangement[c].bears_sources || now.is_source(c);
}

int greatest_side_strength(Moment const& now, Cell c) {
  int greatest = 0;
  for (auto side : sides) greatest = std::max(greatest, now.strength(now.grid().beside(c, side)));
  return greatest;
}

}  // namespace

State intrinsic(Moment const& now, Cell c) {
  auto const& grid = now.grid();
  auto const makers = now.arrangement.practice()[Rule::source_makers];
  if (source_sides(now, c) >= makers && bears_a_source(now, grid.below(c))) return source;
  if (now.is_wet(grid.above(c))) return falling;
  auto const flow = greatest_side_strength(now, c) - 1;
  return flow >= 1 ? static_cast<State>(flow) : dry;
}

}  // namespace leat::water
