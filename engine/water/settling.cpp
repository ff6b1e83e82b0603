#include "engine/water/settling.hpp"

#include "engine/water/step.hpp"

namespace leat::water {

using model::Rule;
using model::sides;

Field switched(model::Arrangement const& before, Field const& field,
               model::Arrangement const& after) {
  auto start = field;
  for (Cell c = 0; c < start.size(); ++c) {
    if (before[c] != after[c]) start[c] = after[c].is_source ? source : dry;
  }
  return start;
}

void Settling::Agenda::add(Cell c) {
  if (is_listed_[c] || !grid_->is_inside(c)) return;
  is_listed_[c] = true;
  cells_.push_back(c);
}

std::vector<Cell> Settling::Agenda::take() {
  for (auto c : cells_) is_listed_[c] = false;
  return std::exchange(cells_, {});
}

// A first step from dry can only fill placed sources.
Settling::Settling(model::Arrangement const& arrangement)
    : arrangement_(&arrangement),
      field_(dry_field(arrangement)),
      holes_(Moment{arrangement, field_}),
      agenda_(arrangement.grid()) {
  for (Cell c = 0; c < field_.size(); ++c) {
    if (arrangement[c].is_source) agenda_.add(c);
  }
}

// A changed material changes its cell, ways to holes through it, and whether the cell above has a
// hole below.
Settling::Settling(model::Arrangement const& before, Field const& field,
                   model::Arrangement const& after, bool was_settled)
    : arrangement_(&after),
      field_(switched(before, field, after)),
      holes_(Moment{after, field_}),
      agenda_(after.grid()) {
  for (Cell c = 0; c < field_.size(); ++c) {
    if (!was_settled) agenda_.add(c);
    if (before[c] == after[c]) continue;
    list_influence_of_change(c);
    list_influence_on_holes(c);
    list_influence_on_holes(after.grid().above(c));
  }
}

// A cell's own state and wetness are read by itself, by its six neighbours, and by the sides of the
// cell above, which asks whether the cell is still being poured into.
void Settling::list_influence_of_change(Cell c) {
  auto const& grid = arrangement_->grid();
  agenda_.add(c);
  agenda_.add(grid.above(c));
  agenda_.add(grid.below(c));
  for (auto side : sides) {
    agenda_.add(grid.beside(c, side));
    agenda_.add(grid.beside(grid.above(c), side));
  }
}

// Where a way to a hole opens or closes, D may change up to hole_search steps away; a neighbour of
// such a cell then prefers other sides, and a neighbour of that one is offered or not. Counts of
// source sides reach less far.
void Settling::list_influence_on_holes(Cell c) {
  auto const& grid = arrangement_->grid();
  auto const centre = grid.place(c);
  auto const reach = arrangement_->practice()[Rule::hole_search] + 2;
  for (int y = centre.y - reach; y <= centre.y + reach; ++y) {
    for (int x = centre.x - reach; x <= centre.x + reach; ++x) {
      model::Place const near{x, y, centre.z};
      if (grid.is_inside(near)) agenda_.add(grid.cell(near));
    }
  }
}

bool Settling::step() {
  Moment const now{*arrangement_, field_, &holes_};
  std::vector<std::pair<Cell, State>> changes;
  for (auto c : agenda_.take()) {
    if (auto const after = next_state(now, c); after != field_[c]) changes.emplace_back(c, after);
  }
  if (changes.empty()) return false;
  for (auto [c, after] : changes) field_[c] = after;
  for (auto [c, after] : changes) {
    list_influence_of_change(c);
    if (after != source) continue;
    holes_.source_formed(now, c);
    list_influence_on_holes(c);
  }
  ++steps_;
  return true;
}

}  // namespace leat::water
