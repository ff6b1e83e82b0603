#include "engine/logic/statement.hpp"

#include <bit>
#include <utility>

#include "engine/logic/minimal_cover.hpp"

namespace leat::logic {

namespace {

std::pair<int, std::size_t> length(std::vector<Cube> const& cubes, bool is_negated) {
  int words = is_negated ? 1 : 0;
  for (auto const& cube : cubes) {
    words += std::popcount(cube.care) + std::popcount(cube.care & ~cube.value);
  }
  return {words, cubes.size()};
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
  auto plain = minimal_cover(rows & ~free, rows | free).cubes;
  auto const others = ~rows;
  auto negated = minimal_cover(others & ~free, others | free).cubes;
  if (!plain.empty() && !negated.empty() && length(negated, true) < length(plain, false)) {
    return {true, std::move(negated)};
  }
  return {false, std::move(plain)};
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
