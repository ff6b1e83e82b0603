#pragma once
#include <vector>

#include "lang/check/drawing.hpp"
#include "lang/check/marks.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// Reports plates without a signal, marks for signals that are no plates, plate signals that no mark
// places, and plates drawn where nothing ever carries them.
void check_plates(Reading const&, std::vector<Drawing> const&, std::vector<MarkFill> const&,
                  std::vector<model::Material> const&);

}  // namespace leat::check
