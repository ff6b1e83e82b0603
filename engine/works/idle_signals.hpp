#pragma once
#include <optional>
#include <vector>

#include "engine/works/judge_works.hpp"

namespace leat::works {

// The variables that switch some cell and change nothing: no passage depends on them, and no
// memory. None where that is not known, or would take too long to find out: what can come about has
// to be known, and routes may not be told wider than they are. `seen`: what is seen to be reached,
// which leads the search. Contract: passages are known.
std::optional<std::vector<PlantFinding>> idle_signals(model::Design const& plant, Reached& seen,
                                                      WorksJudgement const&);

}  // namespace leat::works
