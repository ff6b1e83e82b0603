#include "engine/water/influence.hpp"

#include <algorithm>

namespace leat::water {

using model::Rule;
using model::sides;

Reads Influence::reads(Cell c) const {
  Reads reads;
  if (bounds_.is_constant(c)) return reads;
  auto const above = bounds_.design().grid.above(c);
  read_material(c, reads);
  read_forming(c, reads);
  if (bounds_.is_surely_wet(above)) return reads;
  read_water(above, reads);
  read_strength(c, reads);
  if (bounds_.is_surely_wet(c)) return reads;
  for (auto side : sides) read_offer(bounds_.design().grid.beside(c, side), c, reads);
  return reads;
}

void Influence::read_water(Cell c, Reads& reads) const {
  if (!bounds_.is_constant(c)) reads.water.push_back(c);
}

void Influence::read_material(Cell c, Reads& reads) const {
  if (!bounds_.fill(c).is_fixed) reads.material.push_back(c);
}

void Influence::read_sources_beside(Cell c, Reads& reads) const {
  for (auto side : sides) {
    auto const n = bounds_.design().grid.beside(c, side);
    if (bounds_.may_be_source(n)) read_water(n, reads);
  }
}

void Influence::read_forming(Cell c, Reads& reads) const {
  auto const& design = bounds_.design();
  auto const below = design.grid.below(c);
  bool const may_form = bounds_.side_sources(c, false) >= design.practice[Rule::source_makers] &&
                        (bounds_.fill(below).may_bear || bounds_.may_be_source(below));
  if (!may_form) return;
  read_sources_beside(c, reads);
  read_material(below, reads);
  if (bounds_.may_be_source(below)) read_water(below, reads);
}

void Influence::read_strength(Cell c, Reads& reads) const {
  auto const& grid = bounds_.design().grid;
  int sure = 1;  // a strength of 1 flows no further
  for (auto side : sides) sure = std::max(sure, bounds_.least(grid.beside(c, side)));
  for (auto side : sides) {
    auto const n = grid.beside(c, side);
    if (bounds_.most(n) > sure) read_water(n, reads);
  }
}

void Influence::read_offer(Cell from, Cell to, Reads& reads) const {
  auto const& design = bounds_.design();
  if (bounds_.most(from) < 2) return;
  auto const below = design.grid.below(from);
  bool const only_goes_down = !bounds_.may_be_source(from) && bounds_.fill(below).surely_enters;
  auto const preference = bounds_.preference(from, to);
  if (only_goes_down || preference == Bounds::Preference::never) return;
  read_water(from, reads);
  read_material(below, reads);
  if (bounds_.may_be_source(from) && bounds_.fill(below).may_enter) {
    read_water(below, reads);
    if (bounds_.side_sources(from, false) >= design.practice[Rule::eager_makers])
      read_sources_beside(from, reads);
  }
  if (preference == Bounds::Preference::sometimes) read_ways(from, reads);
}

// From each side, all that may be passed, as far as a nearest hole can be.
void Influence::read_ways(Cell from, Reads& reads) const {
  auto const& design = bounds_.design();
  auto const& grid = design.grid;
  std::vector<Cell> seen;
  auto const meet = [&](Cell c) {
    if (bounds_.may_be_asked(c) && std::find(seen.begin(), seen.end(), c) == seen.end())
      seen.push_back(c);
  };
  auto furthest = design.practice[Rule::hole_search];
  for (auto side : sides) {
    auto const asked = grid.beside(from, side);
    if (bounds_.is_surely_asked(asked))
      furthest = std::min(furthest, bounds_.hole_distance(asked).most);
    meet(asked);
  }
  std::size_t ring = 0;
  for (int steps = 0; steps <= furthest && ring < seen.size(); ++steps) {
    auto const end = seen.size();
    for (; ring < end; ++ring) {
      auto const c = seen[ring];
      read_material(c, reads);
      if (bounds_.may_be_source(c)) read_water(c, reads);
      if (!grid.is_inside(c)) continue;
      read_material(grid.below(c), reads);
      for (auto side : sides) meet(grid.beside(c, side));
    }
  }
}

}  // namespace leat::water
