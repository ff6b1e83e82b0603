#include "engine/water/bounds.hpp"

#include <algorithm>
#include <deque>

#include "engine/water/holes.hpp"

namespace leat::water {

using model::Rule;
using model::sides;

// Cells to be looked at again, each once.
class Bounds::Agenda {
 public:
  explicit Agenda(model::Grid const& grid) : grid_(grid), is_listed_(grid.size(), false) {}

  void add(Cell c) {
    if (is_listed_[c] || !grid_.is_inside(c)) return;
    is_listed_[c] = true;
    open_.push_back(c);
  }
  void add_all() {
    for (Cell c = 0; c < grid_.size(); ++c) add(c);
  }
  void add_beside(Cell c) {
    for (auto side : sides) add(grid_.beside(c, side));
  }
  bool is_empty() const { return open_.empty(); }
  Cell take() {
    auto const c = open_.front();
    open_.pop_front();
    is_listed_[c] = false;
    return c;
  }

 private:
  model::Grid const& grid_;
  std::vector<bool> is_listed_;
  std::deque<Cell> open_;
};

Bounds::Bounds(model::Design const& design)
    : design_(&design),
      full_(design.practice[Rule::source_strength]),
      least_(design.grid.size(), 0),
      most_(design.grid.size(), 0),
      may_be_source_(design.grid.size(), false),
      is_source_(design.grid.size(), false),
      distance_(2 * design.grid.size(), -1) {
  bound_fills();
  rise_most();
  rise_least();
}

void Bounds::bound_fills() {
  for (auto const& fill : design_->fills) {
    auto const& off = design_->materials[fill.unpowered];
    auto const& on = fill.is_switched() ? design_->materials[fill.powered] : off;
    FillBounds bounds;
    bounds.is_fixed = on == off;
    bounds.may_enter = on.water_enters || off.water_enters;
    bounds.surely_enters = on.water_enters && off.water_enters;
    bounds.may_be_placed = on.is_source || off.is_source;
    bounds.is_placed = bounds.is_fixed && on.is_source && on.water_enters;
    bounds.may_bear = on.bears_sources || off.bears_sources;
    bounds.surely_bears = on.bears_sources && off.bears_sources;
    of_fill_.push_back(bounds);
  }
}

int Bounds::side_sources(Cell c, bool surely) const {
  auto const& known = surely ? is_source_ : may_be_source_;
  return static_cast<int>(std::count_if(sides.begin(), sides.end(), [&](model::Side side) {
    return known[design_->grid.beside(c, side)];
  }));
}

void Bounds::rise_most() {
  auto const& grid = design_->grid;
  Agenda agenda(grid);
  agenda.add_all();
  while (!agenda.is_empty()) {
    auto const c = agenda.take();
    if (!raise_most(c)) continue;
    agenda.add_beside(c);
    agenda.add(grid.below(c));
    agenda.add(grid.above(c));
  }
}

bool Bounds::raise_most(Cell c) {
  auto const& grid = design_->grid;
  auto const& own = fill(c);
  if (!own.may_enter && !own.may_be_placed) return false;
  auto const below = grid.below(c);
  bool const forms = side_sources(c, false) >= design_->practice[Rule::source_makers] &&
                     (fill(below).may_bear || may_be_source_[below]);
  bool const is_source = own.may_be_placed || forms || may_be_source_[c];
  int most = 0;
  for (auto side : sides) most = std::max(most, most_[grid.beside(c, side)] - 1);
  if (is_source || most_[grid.above(c)] > 0) most = full_;
  if (most <= most_[c] && is_source == may_be_source_[c]) return false;
  most_[c] = static_cast<std::uint8_t>(std::max<int>(most, most_[c]));
  may_be_source_[c] = is_source;
  return true;
}

void Bounds::rise_least() {
  auto const& grid = design_->grid;
  Agenda agenda(grid);
  agenda.add_all();
  while (!agenda.is_empty()) {
    auto const c = agenda.take();
    if (!raise_least(c)) continue;
    agenda.add(grid.below(c));
    for (auto from : {c, grid.above(c)}) {
      agenda.add(from);
      agenda.add_beside(from);
    }
    for (auto side : sides) {
      if (auto const n = grid.beside(c, side); grid.is_inside(n)) agenda.add_beside(n);
    }
  }
}

bool Bounds::raise_least(Cell c) {
  auto const& grid = design_->grid;
  auto const& own = fill(c);
  if (!own.is_fixed || !own.may_enter) return false;
  auto const below = grid.below(c);
  bool const is_under_water = least_[grid.above(c)] > 0;
  bool const is_wet = own.is_placed || least_[c] > 0 || is_under_water ||
                      std::any_of(sides.begin(), sides.end(), [&](model::Side side) {
                        return surely_offers(grid.beside(c, side), c);
                      });
  if (!is_wet) return false;
  bool const forms = side_sources(c, true) >= design_->practice[Rule::source_makers] &&
                     (fill(below).surely_bears || is_source_[below]);
  bool const is_source = own.is_placed || forms || is_source_[c];
  int least = 0;
  for (auto side : sides) least = std::max(least, least_[grid.beside(c, side)] - 1);
  if (is_source || is_under_water) least = full_;
  if (least <= least_[c] && is_source == is_source_[c]) return false;
  least_[c] = static_cast<std::uint8_t>(std::max<int>(least, least_[c]));
  is_source_[c] = is_source;
  return true;
}

bool Bounds::surely_offers(Cell from, Cell asked) const {
  if (least_[from] < 2) return false;
  auto const below = design_->grid.below(from);
  bool const spreads =
      !fill(below).may_enter ||
      (is_source_[from] &&
       (least_[below] > 0 || side_sources(from, true) >= design_->practice[Rule::eager_makers]));
  return spreads && preference(from, asked) == Preference::always;
}

Bounds::Preference Bounds::preference(Cell from, Cell asked) const {
  auto const own = hole_distance(asked);
  auto found = Preference::always;
  for (auto side : sides) {
    auto const rival = design_->grid.beside(from, side);
    if (rival == asked || !may_be_asked(rival)) continue;
    auto const distance = hole_distance(rival);
    if (is_surely_asked(rival) && distance.most < own.least) return Preference::never;
    if (distance.least < own.most) found = Preference::sometimes;
  }
  return found;
}

Bounds::Distance Bounds::hole_distance(Cell c) const {
  auto* known = &distance_[2 * std::size_t{c}];
  if (known[0] < 0) {
    known[0] = static_cast<std::int16_t>(search(c, false));
    known[1] = static_cast<std::int16_t>(search(c, true));
  }
  return {known[0], known[1]};
}

// The search of hole_distance (holes.cpp), through what may be passed, or through what surely can.
int Bounds::search(Cell start, bool surely) const {
  auto const& grid = design_->grid;
  auto const reach = design_->practice[Rule::hole_search];
  auto const has_hole = [&](Cell c) {
    if (!grid.is_inside(c)) return design_->outside_is_open;
    auto const& below = fill(grid.below(c));
    return surely ? below.surely_enters : below.may_enter;
  };
  std::vector<Cell> seen{start};
  for (std::size_t ring = 0, steps = 0; ring < seen.size(); ++steps) {
    auto const end = seen.size();
    for (auto i = ring; i < end; ++i) {
      if (has_hole(seen[i])) return static_cast<int>(steps);
    }
    if (static_cast<int>(steps) == reach) break;
    for (auto i = ring; i < end; ++i) {
      if (!grid.is_inside(seen[i])) continue;
      for (auto side : sides) {
        auto const next = grid.beside(seen[i], side);
        if (surely ? !is_surely_asked(next) : !may_be_asked(next)) continue;
        if (std::find(seen.begin(), seen.end(), next) == seen.end()) seen.push_back(next);
      }
    }
    ring = end;
  }
  return no_hole;
}

}  // namespace leat::water
