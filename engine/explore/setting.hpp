#pragma once
#include <vector>

#include "engine/model/design.hpp"

namespace leat::explore {

// How every fill's control stands: one value a fill, false for those that are not switched or not
// drawn.
using Setting = std::vector<bool>;

// Which fills stand somewhere in the drawing, one value a fill. A file's marks serve all its
// junctions; a setting only tells apart what stands in this one.
std::vector<bool> fills_drawn(model::Design const&);

// The setting that the signals make, given every signal's value.
Setting setting_in(model::Design const&, std::vector<bool> const& is_drawn,
                   std::vector<bool> const& signals);

}  // namespace leat::explore
