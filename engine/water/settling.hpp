#pragma once
#include <utility>
#include <vector>

#include "engine/water/holes.hpp"

namespace leat::water {

// The water right after the arrangement has changed and before it moves: cells water may no longer
// enter lose it; a cell that changes material starts dry, or as a source if it is now placed water
// (model section 2, choice).
Field switched(model::Arrangement const& before, Field const&, model::Arrangement const& after);

// Water on its way to rest, step by step; the same fields as `step` gives, looking only where the
// last changes can matter.
//
// Idea: a list of the cells whose next state may differ from the present one. What a changed cell
// can influence follows from what the rules read (see settling.cpp). Cost: a few looks for each
// change, and one pass over the grid at the start. The arrangement must outlive it.
class Settling {
 public:
  explicit Settling(model::Arrangement const&);  // from dry
  // From a field that rested under `before`; where it was still moving, `was_settled` must say so,
  // and the first step looks at every cell.
  Settling(model::Arrangement const& before, Field const&, model::Arrangement const& after,
           bool was_settled = true);

  // One water step; false when it changes nothing: the water is settled.
  bool step();
  int steps() const { return steps_; }
  Field const& field() const { return field_; }
  Field take_field() { return std::move(field_); }

 private:
  // The cells to look at in the next step, each once.
  class Agenda {
   public:
    explicit Agenda(model::Grid const& grid) : grid_(&grid), is_listed_(grid.size(), false) {}
    void add(Cell);
    std::vector<Cell> take();

   private:
    model::Grid const* grid_;
    std::vector<bool> is_listed_;
    std::vector<Cell> cells_;
  };

  void list_influence_of_change(Cell);
  void list_influence_on_holes(Cell);

  model::Arrangement const* arrangement_;
  Field field_;
  HoleDistances holes_;
  Agenda agenda_;
  int steps_ = 0;
};

}  // namespace leat::water
