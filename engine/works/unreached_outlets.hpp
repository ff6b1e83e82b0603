#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Outlets that no body ever comes to, each cause once: an outlet is told where bodies come to all
// inlets from which some way leads to it, and counts those of the plant that lie behind it along
// the joins. Where a part's own finding says so already, that one is left and counts. What lies
// behind nothing, such as a ring of joins that nobody enters, is told one by one. `seen`: what is
// seen to be reached; where that leaves some out, all conditions of outlets are found, which can be
// more than the diagram holds: then the kind is left out. Contract: passages are known.
void unreached_outlets(model::Design const& plant, Reached const& seen, WorksJudgement&);

}  // namespace leat::works
