#include "engine/water/holes.hpp"

#include <algorithm>
#include <cassert>
#include <cstdlib>
#include <utility>

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

// Breadth-first over passages from `start`: the steps to the first cell with a hole below, or
// no_hole.
int search(Moment const& now, Cell start) {
  auto const reach = now.arrangement.practice()[Rule::hole_search];
  std::vector<Cell> seen{start};
  std::size_t ring = 0;
  for (int steps = 0; steps <= reach; ++steps) {
    auto const ring_end = seen.size();
    for (std::size_t i = ring; i < ring_end; ++i) {
      if (has_hole_below(now, seen[i])) return steps;
    }
    for (std::size_t i = ring; i < ring_end && steps < reach; ++i) {
      for (auto side : sides) {
        auto const next = now.grid().beside(seen[i], side);
        if (is_passage(now, next) && std::find(seen.begin(), seen.end(), next) == seen.end()) {
          seen.push_back(next);
        }
      }
    }
    ring = ring_end;
  }
  return no_hole;
}

}  // namespace

int hole_distance(Moment const& now, Cell c) {
  assert(is_passage(now, c));
  if (now.holes && now.grid().is_inside(c)) return (*now.holes)[c];
  return search(now, c);
}

namespace {

template <class Visit>
void for_each_inside(model::Grid const& grid, Visit visit) {
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      auto c = grid.cell({0, y, z});
      for (int x = 0; x < grid.width(); ++x, ++c) visit(c, x, y);
    }
  }
}

}  // namespace

HoleDistances::HoleDistances(Moment const& start)
    : distance_(start.field.size(), static_cast<std::uint8_t>(no_hole)) {
  auto const& grid = start.grid();
  std::vector<Cell> ring, next_ring;
  auto const reached = [&](Cell c, int steps, std::vector<Cell>& into) {
    if (distance_[c] != no_hole || !is_passage(start, c)) return;
    distance_[c] = static_cast<std::uint8_t>(steps);
    into.push_back(c);
  };
  for_each_inside(grid, [&](Cell c, int, int) {
    if (has_hole_below(start, c)) reached(c, 0, ring);
  });
  auto const reach = start.arrangement.practice()[Rule::hole_search];
  for (int steps = 1; steps <= reach; ++steps) {
    if (steps == 1 && start.arrangement.outside_is_open()) {
      // The open outside is all hole: every cell at the drawing's edge is one step from it.
      for_each_inside(grid, [&](Cell c, int x, int y) {
        bool const at_edge = x == 0 || y == 0 || x == grid.width() - 1 || y == grid.depth() - 1;
        if (at_edge) reached(c, 1, next_ring);
      });
    }
    for (auto c : ring) {
      for (auto side : sides) {
        auto const next = grid.beside(c, side);
        if (grid.is_inside(next)) reached(next, steps, next_ring);
      }
    }
    ring.swap(next_ring);
    next_ring.clear();
  }
}

void HoleDistances::source_formed(Moment const& now, Cell c) {
  assert(now.is_source(c));
  auto const reach = now.arrangement.practice()[Rule::hole_search];
  auto const& grid = now.grid();
  auto const centre = grid.place(c);
  Moment const searched{now.arrangement, now.field, nullptr};
  auto const own = std::exchange(distance_[c], static_cast<std::uint8_t>(no_hole));
  if (own == no_hole) return;
  for (int y = centre.y - reach; y <= centre.y + reach; ++y) {
    auto const width = reach - std::abs(y - centre.y);
    for (int x = centre.x - width; x <= centre.x + width; ++x) {
      if (!grid.is_inside({x, y, centre.z})) continue;
      auto const near = grid.cell({x, y, centre.z});
      auto const steps = std::abs(x - centre.x) + std::abs(y - centre.y);
      if (distance_[near] == no_hole || distance_[near] < own + steps) continue;
      if (is_passage(now, near))
        distance_[near] = static_cast<std::uint8_t>(hole_distance(searched, near));
    }
  }
}

}  // namespace leat::water
