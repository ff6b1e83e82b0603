#pragma once
#include <functional>
#include <string>

#include "engine/model/design.hpp"

namespace leat::laws {

// A smaller design that still fails: cells become rock, open, or what one of their switched fills
// is when it is not powered, one after the other, as long as `fails` says so; then rows, columns
// and levels go that are no longer needed. Contract: the design fails. Cost: at most a few times as
// many trials as it has cells. For designs whose ports nobody asks about.
model::Design shrunk(model::Design, std::function<bool(model::Design const&)> const& fails);

// The same with the ports kept: first inlets, outlets, profiles and controls go that are not
// needed. Contract: a design without inlets, outlets or profiles does not fail.
model::Design shrunk_with_ports(model::Design,
                                std::function<bool(model::Design const&)> const& fails);

// The fills level by level, lowest first, one number a cell, with what each fill is, and where the
// ports are, x, y, z: for a message.
std::string drawn_in_numbers(model::Design const&);

}  // namespace leat::laws
