#pragma once
#include "engine/water/field.hpp"

namespace leat::water {

// Model section 2, "n spreads sideways when". Contract: `n` is wet.
bool spreads_sideways(Moment const&, Cell n);

// "n offers c": n spreads sideways and `side`, where c lies, is one of its preferred sides: of the
// sides that water may enter and that hold no source those with the least D; all of them if none
// has a D.
bool offers(Moment const&, Cell n, model::Side side);

// Whether a wet cell sends water out of an open drawing: sideways by an offer, or down.
bool spills(Moment const&, Cell n);

}  // namespace leat::water
