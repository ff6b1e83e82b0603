#pragma once
#include <vector>

#include "lang/cli/judged.hpp"

namespace leat::cli {

// An acceptance without a place speaks of all junctions of its file, so it is stale only where
// nothing answers to it in any of them, and then that is told of the first alone. Takes back what
// was told otherwise of each junction judged by itself. A junction that is not known to its end may
// hold what answers.
void settle_shared_acceptances(std::vector<lower::Junction>&, std::vector<Judged>&,
                               Progress const& = {});

}  // namespace leat::cli
