#pragma once
#include <cstdint>
#include <vector>

#include "engine/logic/row_set.hpp"

namespace leat::logic {

// A conjunction of inputs: bit i of `care` says that input i matters, the same bit of `value` how
// it stands.
struct Cube {
  std::uint32_t care = 0, value = 0;
  bool operator==(Cube const&) const = default;
};

// An irredundant sum of prime cubes that is true on all of `needed`, false outside `allowed`, and
// free between: the condition stated as widely as the rows permit.
//
// Idea: Minato's recursion (Shin-ichi Minato, "Fast generation of irredundant sum-of-products forms
// from binary decision diagrams", 1992) on truth tables: split on the first input; what only one
// half can cover takes that literal; the rest is covered without it. Cost: at most a few sweeps of
// the table an input. Limit: irredundant, not always the fewest cubes. Contract: needed is a subset
// of allowed.
std::vector<Cube> irredundant_cover(RowSet const& needed, RowSet const& allowed);

// The rows of a sum of cubes.
RowSet rows_of(std::vector<Cube> const&, int inputs);

}  // namespace leat::logic
