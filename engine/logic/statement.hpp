#pragma once
#include <vector>

#include "engine/logic/cover.hpp"

namespace leat::logic {

// A set of rows stated in words' order: the sum of cubes, or all but that sum.
struct Statement {
  bool is_negated = false;
  std::vector<Cube> cubes;
  bool operator==(Statement const&) const = default;
};

// The shorter of two minimal statements: of the rows, or of the rows left out. What it says of
// rows that are not `reachable` is free, unless `rows` holds none that is: then it is exact. Length
// is the number of literals and negations, then of cubes; the plain one wins a tie. Cost: two
// covers.
Statement shortest_statement(RowSet const& rows, RowSet const& reachable);

// The same rows as cubes that exclude each other, so that no row is named twice.
//
// Idea: each cube gives up what the cubes before it already hold: along the literals of such a
// cube, one after the other, the part that differs there is kept (the sharp product of two-level
// logic, common practice). Cost: at worst exponential in the inputs, bounded by the row count.
std::vector<Cube> disjoint_cubes(std::vector<Cube> const&, int inputs);

}  // namespace leat::logic
