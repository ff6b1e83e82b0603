#pragma once
#include <vector>

#include "engine/logic/cover.hpp"

namespace leat::logic {

// A sum of cubes, and whether none is smaller: no sum between what is needed and what is allowed
// has fewer cubes, or as many with fewer literals.
struct MinimalSum {
  std::vector<Cube> cubes;
  bool is_minimal = false;
  bool operator==(MinimalSum const&) const = default;
};

// The smallest sum of prime cubes that is true on all of `needed`, false outside `allowed`, and
// free between: fewest cubes, then fewest literals, then fewest negations. Same order of cubes as
// irredundant_cover's.
//
// Idea: W. V. Quine (1952) and E. J. McCluskey (1956): some smallest sum has prime cubes only;
// prime_cubes lists them and least_choice chooses. Inputs on which neither set depends are left
// out beforehand, since no prime cube names them. Cost: microseconds where essential cubes decide;
// bounded work elsewhere. Limit: with more than 8 inputs that matter, or past the bound, the
// smaller of irredundant_cover and what was found; is_minimal then is false. Contract: needed lies
// within allowed.
MinimalSum minimal_cover(RowSet const& needed, RowSet const& allowed);

// A disjunction of inputs: bit i of `care` says that input i is named, the same bit of `value` that
// it is named plainly, else negated.
struct Clause {
  std::uint32_t care = 0, value = 0;
  bool operator==(Clause const&) const = default;
};

struct MinimalProduct {
  std::vector<Clause> clauses;
  bool is_minimal = false;
  bool operator==(MinimalProduct const&) const = default;
};

// The smallest product of clauses with the same freedom: by de Morgan the cubes of what is not
// needed, negated; among equals the one with the fewest plain names.
MinimalProduct minimal_clauses(RowSet const& needed, RowSet const& allowed);

// The rows of a product of clauses; all rows where there is none.
RowSet rows_of(std::vector<Clause> const&, int inputs);

}  // namespace leat::logic
