#pragma once
#include <cstdint>
#include <vector>

#include "engine/logic/minimal_cover.hpp"

namespace leat::logic {

// A set of rows stated in words' order: the sum of cubes, or all but that sum, or the product of
// clauses.
struct Statement {
  enum class Form : std::uint8_t { sum, negated_sum, product };
  Form form = Form::sum;
  std::vector<Cube> cubes{};
  std::vector<Clause> clauses{};  // of a product, which has no cubes
  bool operator==(Statement const&) const = default;
};

// The shortest of three minimal statements: the rows as a sum, the rows left out as a sum, the rows
// as a product of clauses; but one cube is told as it is where something in it is on, for that
// reads best. What it says of rows that are not `reachable` is free, unless `rows` holds none that
// is: then it is exact. Length is the number of literals and negations, then, of the two sums, that
// of cubes; the earlier one wins a tie. Cost: three covers.
Statement shortest_statement(RowSet const& rows, RowSet const& reachable);

// The same rows as cubes that exclude each other, so that no row is named twice.
//
// Idea: each cube gives up what the cubes before it already hold: along the literals of such a
// cube, one after the other, the part that differs there is kept (the sharp product of two-level
// logic, common practice). Cost: at worst exponential in the inputs, bounded by the row count.
std::vector<Cube> disjoint_cubes(std::vector<Cube> const&, int inputs);

}  // namespace leat::logic
