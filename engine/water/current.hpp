#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// The current at a cell: an integer vector, x east and y south (model section 3, "Current").
struct Current {
  int x = 0, y = 0;
  bool operator==(Current const&) const = default;
};

// Zero where the cell is dry.
Current current_at(Moment const&, Cell c);

}  // namespace leat::water
