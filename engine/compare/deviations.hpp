#pragma once
#include <vector>

#include "engine/compare/comparison.hpp"

namespace leat::compare {

// What a design does otherwise than was recorded of it, as findings: one for every inlet and body
// whose routes differ, one for every kind of finding that shows elsewhere, one for the times. What
// the record says nothing of is unrecorded. `inputs`: of how many of the ground's first variables
// rows are to be told; 0: findings have no rows. `stale`: entries of things there are no more.
// Contract: the ground is that of the design by itself.
std::vector<findings::Finding> deviations(Behaviour const& recorded, Behaviour const& now,
                                          Comparison const&, std::size_t stale, int inputs,
                                          Ground&);

// The passages that a record says nothing of, as indices.
std::vector<std::size_t> unrecorded_passages(Behaviour const& recorded, Behaviour const& now);

}  // namespace leat::compare
