#include "engine/water/holes.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace leat::water {

using model::Rule;
using model::sides;

bool has_hole_below(Moment const& now, Cell c) {
  auto const& grid = now.grid();
  if (!grid.is_inside(c)) return now.arrangement.outside_is_open();
  return now.may_enter(grid.below(c));
}

namespace {

bool is_passage(Moment const& now, Cell c) { return now.may_enter(c) && !now.is_source(c); }

// The cells of one search, at most those within hole_search side steps, on the stack.
constexpr int most_reach = model::rule_table[static_cast<std::size_t>(Rule::hole_search)].most;
constexpr std::size_t most_seen = 2 * most_reach * (most_reach + 1) + 1;

}  // namespace

// Breadth-first over passages: ring by ring, and no cell twice.
int hole_distance(Moment const& now, Cell start) {
  assert(is_passage(now, start));
  auto const reach = now.arrangement.practice()[Rule::hole_search];
  std::array<Cell, most_seen> seen;
  seen[0] = start;
  std::size_t ring = 0, end = 1;
  for (int steps = 0; steps <= reach; ++steps) {
    auto const ring_end = end;
    for (std::size_t i = ring; i < ring_end; ++i) {
      if (has_hole_below(now, seen[i])) return steps;
    }
    for (std::size_t i = ring; i < ring_end && steps < reach; ++i) {
      for (auto side : sides) {
        auto const next = now.grid().beside(seen[i], side);
        bool const is_new = std::find(seen.data(), seen.data() + end, next) == seen.data() + end;
        if (is_new && is_passage(now, next)) seen[end++] = next;
      }
    }
    ring = ring_end;
  }
  return no_hole;
}

}  // namespace leat::water
