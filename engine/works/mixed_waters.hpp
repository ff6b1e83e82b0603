#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Whether a body's way can be put together of waters that no history brings about together.
//
// In one combination an island, or a region of one, can have several waters, by what was done
// before; each of them is taken with each of every other. That is too much where two of them follow
// from one signal, for then one history made both; where memory outside of the island, or what is
// promised never to come about, tells of that history; where a body comes into one island twice, in
// unlike waters; and where an island has two regions of the kind. Without all that, islands that
// share no signal have histories of their own, and any of their waters come together.
struct MixedWaters {
  bool may_mix = false;
  // A body can come back to where it was: what keeps it going round in one water has a way out in
  // another, and is not told as a trap.
  bool may_return = false;
};
// Contract: parts are judged and conditions known.
MixedWaters mixed_waters(model::Design const& plant, WorksJudgement const&);

}  // namespace leat::works
