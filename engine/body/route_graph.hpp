#pragma once
#include <cstdint>
#include <limits>
#include <unordered_map>
#include <vector>

#include "engine/body/moves.hpp"
#include "engine/model/design.hpp"

namespace leat::body {

inline constexpr model::OutletId no_outlet = std::numeric_limits<model::OutletId>::max();

// Which outlet a cell belongs to.
using OutletCells = std::unordered_map<Cell, model::OutletId>;
OutletCells outlet_cells(model::Design const&);

// One arrow of the route graph; `to` is an index into RouteGraph::positions.
struct Step {
  std::uint32_t to = 0;
  MoveRule rule = MoveRule::fall;
  bool is_sure = true;
};

// Every position a body can be at, from the cells where it enters, under one settled field (the set
// R of model section 3), breadth first: a position's index never decreases with its distance from
// the starts.
struct RouteGraph {
  std::vector<Position> positions;
  std::vector<End> ends;                 // per position; none while it has moves
  std::vector<model::OutletId> outlets;  // per position; no_outlet elsewhere
  std::vector<std::uint32_t>
      first_step;  // positions + 1 entries: steps of i are [first_step[i], first_step[i+1])
  std::vector<Step> steps;
  std::vector<std::uint32_t> starts;

  std::size_t size() const { return positions.size(); }
};

// Where a body that enters by the cells of an inlet starts: at each at which it fits.
std::vector<Position> entries(Surroundings const&, std::vector<Cell> const& cells);

// Contract: the body fits at every start. Cost: one visit a position and move.
RouteGraph route_graph(Surroundings const&, std::vector<Position> const& starts,
                       OutletCells const&);

// Per position, whether it leads to one of the goals or is one: all steps walked backwards from
// them. Cost: one visit a step.
std::vector<bool> leading_to(RouteGraph const&, std::vector<std::uint32_t> goals);
// The positions at an outlet.
std::vector<std::uint32_t> positions_at(RouteGraph const&, model::OutletId);

}  // namespace leat::body
