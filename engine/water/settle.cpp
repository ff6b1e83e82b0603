#include "engine/water/settle.hpp"

#include <utility>

#include "engine/water/holes.hpp"
#include "engine/water/step.hpp"

namespace leat::water {

using model::Rule;
using model::sides;

Settled settle_reference(model::Arrangement const& arrangement) {
  Settled result{dry_field(arrangement), 0};
  for (;;) {
    auto after = step(arrangement, result.field);
    if (after == result.field) return result;
    result.field = std::move(after);
    ++result.steps;
  }
}

namespace {

// The cells to look at in the next step, each once.
class Agenda {
 public:
  explicit Agenda(model::Grid const& grid) : grid_(grid), listed_(grid.size(), false) {}

  void add(Cell c) {
    if (listed_[c] || !grid_.is_inside(c)) return;
    listed_[c] = true;
    cells_.push_back(c);
  }

  std::vector<Cell> take() {
    for (auto c : cells_) listed_[c] = false;
    return std::exchange(cells_, {});
  }

 private:
  model::Grid const& grid_;
  std::vector<bool> listed_;
  std::vector<Cell> cells_;
};

// Where a change of `c` can matter in the next step. Its own state and its wetness are read by
// itself, by its six neighbours, and by the sides of the cell above, which asks whether `c` is
// still being poured into.
void add_influence_of_change(model::Grid const& grid, Cell c, Agenda& agenda) {
  agenda.add(c);
  agenda.add(grid.above(c));
  agenda.add(grid.below(c));
  for (auto side : sides) {
    agenda.add(grid.beside(c, side));
    agenda.add(grid.beside(grid.above(c), side));
  }
}

// A source that forms also closes ways to holes: D may change up to hole_search steps away, a
// neighbour of such a cell then prefers other sides, and a neighbour of that one is offered or not.
// The count of source sides reaches two steps.
void add_influence_of_source(model::Grid const& grid, Cell c, int hole_search, Agenda& agenda) {
  auto const centre = grid.place(c);
  auto const reach = hole_search + 2;
  for (int y = centre.y - reach; y <= centre.y + reach; ++y) {
    for (int x = centre.x - reach; x <= centre.x + reach; ++x) {
      model::Place const near{x, y, centre.z};
      if (grid.is_inside(near)) agenda.add(grid.cell(near));
    }
  }
}

void list_placed_sources(model::Arrangement const& arrangement, Agenda& agenda) {
  for (Cell c = 0; c < arrangement.grid().size(); ++c) {
    if (arrangement[c].is_source) agenda.add(c);
  }
}

}  // namespace

Settled settle_fresh(model::Arrangement const& arrangement) {
  auto const& grid = arrangement.grid();
  auto const hole_search = arrangement.practice()[Rule::hole_search];
  Settled result{dry_field(arrangement), 0};
  auto& field = result.field;
  HoleDistances holes(Moment{arrangement, field});
  Moment const now{arrangement, field, &holes};
  Agenda agenda(grid);
  list_placed_sources(arrangement, agenda);

  std::vector<std::pair<Cell, State>> changes;
  for (;;) {
    changes.clear();
    for (auto c : agenda.take()) {
      if (auto const after = next_state(now, c); after != field[c]) changes.emplace_back(c, after);
    }
    if (changes.empty()) return result;
    for (auto [c, after] : changes) field[c] = after;
    for (auto [c, after] : changes) {
      add_influence_of_change(grid, c, agenda);
      if (after != source) continue;
      holes.source_formed(now, c);
      add_influence_of_source(grid, c, hole_search, agenda);
    }
    ++result.steps;
  }
}

}  // namespace leat::water
