#include "engine/logic/cover.hpp"

#include <algorithm>
#include <bit>
#include <cassert>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {

// Cubes over the inputs from `first` on; the sets passed along hold only these inputs.
struct Cover {
  std::vector<Cube> cubes;
  RowSet rows;
};

RowSet joined(RowSet const& off, RowSet const& on) {
  RowSet result(off.inputs() + 1);
  for (Row row = 0; row < off.row_count(); ++row) {
    if (off.contains(row)) result.insert(row);
    if (on.contains(row)) result.insert(row + off.row_count());
  }
  return result;
}

void add_with_literal(std::vector<Cube>& into, std::vector<Cube> cubes, int input, bool is_on) {
  auto const bit = std::uint32_t{1} << input;
  for (auto cube : cubes) {
    cube.care |= bit;
    if (is_on) cube.value |= bit;
    into.push_back(cube);
  }
}

Cover cover_between(RowSet const& needed, RowSet const& allowed, int first) {
  if (needed.is_empty()) return {{}, RowSet(needed.inputs())};
  if (allowed.is_full()) return {{Cube{}}, RowSet(needed.inputs(), true)};
  assert(needed.inputs() > 0);
  auto const need_off = needed.half(false), need_on = needed.half(true);
  auto const may_off = allowed.half(false), may_on = allowed.half(true);

  auto off = cover_between(need_off & ~may_on, may_off, first + 1);
  auto on = cover_between(need_on & ~may_off, may_on, first + 1);
  auto const rest = (need_off & ~off.rows) | (need_on & ~on.rows);
  auto both = cover_between(rest, may_off & may_on, first + 1);

  Cover result{{}, joined(off.rows | both.rows, on.rows | both.rows)};
  add_with_literal(result.cubes, std::move(off.cubes), first, false);
  add_with_literal(result.cubes, std::move(on.cubes), first, true);
  result.cubes.insert(result.cubes.end(), both.cubes.begin(), both.cubes.end());
  return result;
}

}  // namespace

std::vector<Cube> irredundant_cover(RowSet const& needed, RowSet const& allowed) {
  require((needed & ~allowed).is_empty(), "irredundant_cover: needed rows must be allowed");
  auto cubes = cover_between(needed, allowed, 0).cubes;
  // Widest first; among equals the one that names the earlier inputs, so the text is stable.
  std::stable_sort(cubes.begin(), cubes.end(), [](Cube const& a, Cube const& b) {
    auto const size_a = std::popcount(a.care), size_b = std::popcount(b.care);
    return size_a < size_b;
  });
  return cubes;
}

RowSet rows_of(std::vector<Cube> const& cubes, int inputs) {
  RowSet sum(inputs);
  for (auto const& cube : cubes) {
    RowSet product(inputs, true);
    for (int i = 0; i < inputs; ++i) {
      if ((cube.care >> i & 1u) == 0) continue;
      auto const on = RowSet::where_on(inputs, i);
      product &= (cube.value >> i & 1u) != 0 ? on : ~on;
    }
    sum |= product;
  }
  return sum;
}

}  // namespace leat::logic
