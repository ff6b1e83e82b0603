#include "engine/playback/stances.hpp"

#include <algorithm>

namespace leat::playback {

using body::Position;
using model::Cell;

namespace {

Way way_of(model::Grid const& grid, Position from, body::Step const& step, Position to) {
  auto const a = grid.place(from.feet), b = grid.place(to.feet);
  return {step.rule, step.is_sure, b.x - a.x, b.y - a.y, b.z - a.z, to.carried_to, to.fallen};
}

Stance stance_of(model::Grid const& grid, body::RouteGraph const& graph, std::uint32_t at) {
  Stance stance{{}, graph.ends[at], graph.outlets[at]};
  for (auto s = graph.first_step[at]; s < graph.first_step[at + 1]; ++s) {
    auto const& step = graph.steps[s];
    stance.ways.push_back(way_of(grid, graph.positions[at], step, graph.positions[step.to]));
  }
  return stance;
}

std::vector<Cell> cells_inside(model::Grid const& grid) {
  std::vector<Cell> cells;
  for (int z = 0; z < grid.height(); ++z) {
    for (int y = 0; y < grid.depth(); ++y) {
      for (int x = 0; x < grid.width(); ++x) cells.push_back(grid.cell({x, y, z}));
    }
  }
  return cells;
}

}  // namespace

std::uint32_t number_of(model::Grid const& grid, Cell c) {
  auto const at = grid.place(c);
  return static_cast<std::uint32_t>((at.z * grid.depth() + at.y) * grid.width() + at.x);
}

std::uint32_t Spot::number(model::Grid const& grid, Position at) {
  static_assert(body::most_fallen < 5);
  return number_of(grid, at.feet) * per_cell + static_cast<std::uint32_t>(at.carried_to) * 5u +
         at.fallen;
}

Patch stances_in(body::Surroundings const& here, body::OutletCells const& outlets,
                 Numbered<Stance>& stances) {
  auto const& grid = here.grid();
  auto const graph = body::route_graph(here, body::entries(here, cells_inside(grid)), outlets);
  Patch list;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (graph.ends[i] == body::End::spill) continue;
    list.push_back(
        {Spot::number(grid, graph.positions[i]), stances.number(stance_of(grid, graph, i))});
  }
  std::sort(list.begin(), list.end());
  return list;
}

Fate fate_of(body::Surroundings const& here, model::Port const& inlet,
             body::OutletCells const& outlets) {
  auto const graph = body::route_graph(here, body::entries(here, inlet.cells), outlets);
  auto const outcome = body::outcome_of(graph);
  return {outcome.verdict, outcome.outlets,          outcome.has_trap,
          outcome.spills,  !outcome.hanging.empty(), !graph.starts.empty()};
}

}  // namespace leat::playback
