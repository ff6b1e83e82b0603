#include "engine/building/needs.hpp"

#include <algorithm>

#include "engine/logic/cone.hpp"

namespace leat::building {

namespace {

// The cells over the six faces. Contract: inside, or in the first ring of the rim.
template <class Test>
bool any_beside(model::Grid const& grid, model::Place at, Test test) {
  for (model::Place const n :
       {model::Place{at.x + 1, at.y, at.z}, model::Place{at.x - 1, at.y, at.z},
        model::Place{at.x, at.y + 1, at.z}, model::Place{at.x, at.y - 1, at.z},
        model::Place{at.x, at.y, at.z + 1}, model::Place{at.x, at.y, at.z - 1}}) {
    if (grid.is_inside(n) && test(grid.cell(n))) return true;
  }
  return false;
}

bool holds_something(model::Design const& design, model::Place at) {
  return any_beside(design.grid, at,
                    [&](Cell n) { return !is_ever_solid(design, design.fill_of[n]); });
}

void count_around(model::Design const& design, Needs& needs) {
  auto const& grid = design.grid;
  if (design.outside_is_open) return;
  auto const is_edge = [&](model::Place at) { return !grid.is_inside(at); };
  for (int z = -1; z <= grid.height(); ++z) {
    bool const is_whole = z < 0 || z == grid.height();
    for (int y = -1; y <= grid.depth(); ++y) {
      bool const is_row = is_whole || y < 0 || y == grid.depth();
      for (int x = -1; x <= grid.width(); x += is_row ? 1 : grid.width() + 1) {
        if (is_edge({x, y, z}) && holds_something(design, {x, y, z}))
          ++needs.around[static_cast<std::size_t>(z + 1)];
      }
    }
  }
}

}  // namespace

bool is_ever_solid(model::Design const& design, model::FillId id) {
  auto const& fill = design.fills[id];
  auto const& material = design.materials[fill.powered];
  return !fill.is_switched() && !material.water_enters && !material.body_enters;
}

bool is_needed(model::Design const& design, Cell c) {
  return !is_ever_solid(design, design.fill_of[c]) || holds_something(design, design.grid.place(c));
}

Needs needs_of(model::Design const& design) {
  auto const& grid = design.grid;
  auto const levels = static_cast<std::size_t>(grid.height());
  std::vector<std::size_t> const none(design.fills.size(), 0);
  Needs needs{{levels, none}, {levels, none}, std::vector<std::size_t>(levels + 2, 0)};
  for (int z = 0; z < grid.height(); ++z) {
    auto& drawn = needs.drawn[static_cast<std::size_t>(z)];
    auto& needed = needs.needed[static_cast<std::size_t>(z)];
    for (int y = 0; y < grid.depth(); ++y) {
      for (int x = 0; x < grid.width(); ++x) {
        auto const c = grid.cell({x, y, z});
        ++drawn[design.fill_of[c]];
        if (is_needed(design, c)) ++needed[design.fill_of[c]];
      }
    }
  }
  count_around(design, needs);
  return needs;
}

std::vector<model::SignalId> parts_of(model::Design const& design) {
  std::vector<bool> is_drawn(design.fills.size(), false);
  for (auto fill : design.fill_of) is_drawn[fill] = true;  // the rim switches nothing
  std::vector<model::ExpressionId> controls;
  for (model::FillId f = 0; f < design.fills.size(); ++f) {
    if (is_drawn[f] && design.fills[f].control) controls.push_back(*design.fills[f].control);
  }
  auto parts = logic::Cones(design.circuit).of(controls).signals;
  std::erase_if(parts, [&](model::SignalId s) {
    return design.circuit.signals[s].kind == model::SignalKind::wire;
  });
  std::sort(parts.begin(), parts.end());
  return parts;
}

}  // namespace leat::building
