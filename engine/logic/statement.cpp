#include "engine/logic/statement.hpp"

#include <bit>
#include <utility>

namespace leat::logic {

namespace {

template <class Term>  // cubes or clauses
std::pair<int, std::size_t> length(std::vector<Term> const& terms) {
  int words = 0;
  for (auto const& term : terms)
    words += std::popcount(term.care) + std::popcount(term.care & ~term.value);
  return {words, terms.size()};
}

std::pair<int, std::size_t> length(Statement const& statement) {
  if (statement.form == Statement::Form::product) return length(statement.clauses);
  auto sum = length(statement.cubes);
  if (statement.form == Statement::Form::negated_sum) ++sum.first;
  return sum;
}

bool exclude_each_other(Cube const& a, Cube const& b) {
  return (a.care & b.care & (a.value ^ b.value)) != 0;
}

// The rows of `cube` outside `taken`, as cubes that exclude each other.
void append_rest(Cube cube, Cube const& taken, int inputs, std::vector<Cube>& rest) {
  if (exclude_each_other(cube, taken)) {
    rest.push_back(cube);
    return;
  }
  for (int i = 0; i < inputs; ++i) {
    auto const bit = std::uint32_t{1} << i;
    if ((taken.care & bit) == 0 || (cube.care & bit) != 0) continue;
    auto outside = cube;
    outside.care |= bit;
    outside.value = (outside.value & ~bit) | (~taken.value & bit);
    rest.push_back(outside);
    cube.care |= bit;
    cube.value = (cube.value & ~bit) | (taken.value & bit);
  }
}

}  // namespace

Statement shortest_statement(RowSet const& rows, RowSet const& reachable) {
  bool const is_exact = (rows & reachable).is_empty();
  auto const free = is_exact ? RowSet(rows.inputs()) : ~reachable;
  auto const needed = rows & ~free, allowed = rows | free, others = ~rows;
  Statement shortest{Statement::Form::sum, minimal_cover(needed, allowed).cubes};
  Statement negated{Statement::Form::negated_sum,
                    minimal_cover(others & ~free, others | free).cubes};
  if (shortest.cubes.empty() || negated.cubes.empty()) return shortest;
  if (shortest.cubes.size() == 1 && shortest.cubes.front().value != 0) return shortest;
  Statement product{Statement::Form::product, {}, minimal_clauses(needed, allowed).clauses};
  if (length(negated) < length(shortest)) shortest = std::move(negated);
  if (length(product).first < length(shortest).first) return product;
  return shortest;
}

std::vector<Cube> disjoint_cubes(std::vector<Cube> const& cubes, int inputs) {
  std::vector<Cube> result;
  for (auto const& cube : cubes) {
    std::vector<Cube> parts{cube};
    auto const settled = result.size();
    for (std::size_t before = 0; before < settled; ++before) {
      std::vector<Cube> rest;
      for (auto const& part : parts) append_rest(part, result[before], inputs, rest);
      parts = std::move(rest);
    }
    result.insert(result.end(), parts.begin(), parts.end());
  }
  return result;
}

}  // namespace leat::logic
