#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Whether a body's way can be put together of waters that no history brings about together.
//
// In one combination an island, or a region of one, can have several waters, by what was done
// before; each of them is taken with each of every other. That is too much where two of them follow
// from one signal, for then one history made both; where a body comes into one island twice, in
// unlike waters; and where an island has two regions of the kind. Islands that share no signal have
// histories of their own, and any of their waters come together. Contract: parts are judged.
bool waters_mix(model::Design const& plant, WorksJudgement const&);

}  // namespace leat::works
