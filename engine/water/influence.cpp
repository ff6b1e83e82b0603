#include "engine/water/influence.hpp"

#include <algorithm>

namespace leat::water {

using model::Rule;
using model::sides;

// Reads of cells whose water, or whose material, is not always the same.
class Influence::Changing {
 public:
  explicit Changing(Bounds const& bounds) : bounds_(bounds) {}
  void water(Cell c) {
    if (!bounds_.is_constant(c)) reads.water.push_back(c);
  }
  void material(Cell c) {
    if (!bounds_.fill(c).is_fixed) reads.material.push_back(c);
  }
  Reads reads;

 private:
  Bounds const& bounds_;
};

class Influence::All {
 public:
  void water(Cell c) { reads.water.push_back(c); }
  void material(Cell c) { reads.material.push_back(c); }
  Reads reads;
};

Reads Influence::reads(Cell c) const {
  Changing kept(bounds_);
  if (bounds_.is_constant(c)) return kept.reads;
  auto const& grid = bounds_.design().grid;
  auto const above = grid.above(c);
  kept.material(c);
  if (may_form(c)) read_forming(c, kept);
  if (bounds_.is_surely_wet(above)) return kept.reads;
  kept.water(above);
  auto const sure = std::max(1, sure_strength_beside(c));  // a strength of 1 flows no further
  for (auto side : sides) {
    auto const n = grid.beside(c, side);
    if (bounds_.most(n) > sure) kept.water(n);
  }
  if (bounds_.is_surely_wet(c)) return kept.reads;
  for (auto side : sides) {
    auto const from = grid.beside(c, side);
    auto const preference = bounds_.preference(from, c);
    if (!may_offer(from) || preference == Bounds::Preference::never) continue;
    read_offer(from, kept);
    if (preference == Bounds::Preference::sometimes) read_ways(from, kept);
  }
  return kept.reads;
}

Reads Influence::grounds(Cell c) const {
  All kept;
  auto const& grid = bounds_.design().grid;
  kept.material(c);
  if (!bounds_.may_be_wet(c) || bounds_.fill(c).is_placed) return kept.reads;
  auto const above = grid.above(c);
  for (auto near : {above, grid.below(c)}) kept.material(near);
  for (auto side : sides) kept.material(grid.beside(c, side));
  if (may_form(c)) read_forming(c, kept);
  if (bounds_.may_be_wet(above)) kept.water(above);
  if (bounds_.is_surely_wet(above)) return kept.reads;
  auto const sure = sure_strength_beside(c);
  for (auto side : sides) {
    auto const n = grid.beside(c, side);
    if (bounds_.most(n) > 1 && (bounds_.most(n) > sure || bounds_.least(n) == sure)) kept.water(n);
  }
  ground_wetness(c, kept);
  return kept.reads;
}

// Why a cell under dry ones can become wet, or surely is. That a side is never preferred hangs on
// the ways, too.
void Influence::ground_wetness(Cell c, All& kept) const {
  auto const& grid = bounds_.design().grid;
  bool const is_sure = bounds_.is_surely_wet(c);
  for (auto side : sides) {
    auto const from = grid.beside(c, side);
    if (bounds_.most(from) < 2) continue;
    kept.material(grid.below(from));  // may be why its water only goes down
    if (!may_offer(from) || (is_sure && !bounds_.surely_offers(from, c))) continue;
    read_ways(from, kept);
    if (bounds_.preference(from, c) != Bounds::Preference::never) read_offer(from, kept);
  }
}

int Influence::sure_strength_beside(Cell c) const {
  int sure = 0;
  for (auto side : sides)
    sure = std::max(sure, bounds_.least(bounds_.design().grid.beside(c, side)));
  return sure;
}

bool Influence::may_form(Cell c) const {
  auto const& design = bounds_.design();
  auto const below = design.grid.below(c);
  return bounds_.side_sources(c, false) >= design.practice[Rule::source_makers] &&
         (bounds_.fill(below).may_bear || bounds_.may_be_source(below));
}

template <class Kept>
void Influence::read_sources_beside(Cell c, Kept& kept) const {
  for (auto side : sides) {
    auto const n = bounds_.design().grid.beside(c, side);
    if (bounds_.may_be_source(n)) kept.water(n);
  }
}

template <class Kept>
void Influence::read_forming(Cell c, Kept& kept) const {
  auto const below = bounds_.design().grid.below(c);
  read_sources_beside(c, kept);
  kept.material(below);
  if (bounds_.may_be_source(below)) kept.water(below);
}

// Whether the cell has water to offer that does not only go down.
bool Influence::may_offer(Cell from) const {
  auto const below = bounds_.design().grid.below(from);
  bool const only_goes_down = !bounds_.may_be_source(from) && bounds_.fill(below).surely_enters;
  return bounds_.most(from) >= 2 && !only_goes_down;
}

template <class Kept>
void Influence::read_offer(Cell from, Kept& kept) const {
  auto const& design = bounds_.design();
  auto const below = design.grid.below(from);
  kept.water(from);
  kept.material(below);
  if (!bounds_.may_be_source(from) || !bounds_.fill(below).may_enter) return;
  kept.water(below);
  if (bounds_.side_sources(from, false) >= design.practice[Rule::eager_makers])
    read_sources_beside(from, kept);
}

// From each side, all that may be passed, as far as a nearest hole can be.
template <class Kept>
void Influence::read_ways(Cell from, Kept& kept) const {
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
      kept.material(c);
      if (bounds_.may_be_source(c)) kept.water(c);
      if (!grid.is_inside(c)) continue;
      kept.material(grid.below(c));
      for (auto side : sides) meet(grid.beside(c, side));
    }
  }
}

}  // namespace leat::water
