#pragma once
#include <memory>

#include "engine/water/field.hpp"

namespace leat::water {

// The water right after the arrangement has changed and before it moves: cells water may no longer
// enter lose it; a cell that changes material starts dry, or as a source if it is now placed water
// (model section 2, choice). Both arrangements are of the same design.
Field switched(model::Arrangement const& before, Field const&, model::Arrangement const& after);

// The cells whose material differs, ascending.
std::vector<Cell> changed_cells(model::Arrangement const& before, model::Arrangement const& after);

// Water on its way to rest, step by step; the same fields as `step` gives, looking only where the
// last changes can matter, at 64 cells of four rows at once (see Flow). The arrangement must
// outlive it.
class Settling {
 public:
  explicit Settling(model::Arrangement const&);  // from dry
  // From a field that rested under `before`; where it was still moving, `was_settled` must say so,
  // and the first step looks wherever there is water.
  Settling(model::Arrangement const& before, Field const&, model::Arrangement const& after,
           bool was_settled = true);
  ~Settling();
  Settling(Settling&&) noexcept;
  Settling& operator=(Settling&&) noexcept;

  // One water step; false when it changes nothing: the water is settled.
  bool step();
  // Steps until it rests, or until so many steps are made in all; whether it rests.
  bool run(int most_steps);
  int steps() const { return steps_; }
  Field const& field();
  Field take_field();

 private:
  class Rows;
  template <int Most>
  class RowsOf;

  std::unique_ptr<Rows> rows_;
  Field field_;
  int steps_ = 0;
};

}  // namespace leat::water
