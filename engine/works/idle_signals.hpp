#pragma once
#include <vector>

#include "engine/works/judge_works.hpp"

namespace leat::works {

// The variables that switch some cell and change nothing: no passage depends on them, nor where in
// an island bodies stay for ever, and no memory. Where not all is known, the kind is added to
// `left_out`: what can come about has to be known, routes may not be told wider than they are, and
// it may not take too long. `seen`: what is seen to be reached, which leads the search. Contract:
// passages are known.
std::vector<PlantFinding> idle_signals(model::Design const& plant, Reached& seen,
                                       WorksJudgement const&,
                                       std::vector<model::FindingKind>& left_out);

}  // namespace leat::works
