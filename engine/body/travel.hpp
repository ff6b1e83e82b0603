#pragma once
#include <optional>
#include <vector>

#include "engine/body/route_graph.hpp"

namespace leat::body {

// Ticks a step takes at most: one cell from standstill, by the recurrences of motion (model section
// 7). In water along the current v' = v * drag + push, a diagonal or slanting current giving only
// its share; upward the mean stroke less gravity; in air v' = (v - gravity) * drag. A body that
// already moves is quicker, so sums of these are upper estimates. None where the body would never
// move a cell.
std::optional<int> ticks_of(Surroundings const&, Position from, Position to, MoveRule);

// The longest trip from the starts to any end, in ticks; none if it has no bound: a loop, or a step
// that may take for ever.
//
// Idea: a route graph without loops has its steps in topological order; the longest way to each
// position follows in one pass. Cost: one visit a step.
std::optional<int> longest_trip(Surroundings const&, RouteGraph const&);

// The same of the trips that end at one outlet; none also if there is none. A loop that does not
// lead to the outlet does not matter.
std::optional<int> longest_trip(Surroundings const&, RouteGraph const&, model::OutletId);

// The trip to an outlet whose steps sum to the fewest ticks, by the same upper estimate of each
// step; none if there is none. Cost: E. W. Dijkstra's search (1959), one visit a step.
std::optional<int> quickest_trip(Surroundings const&, RouteGraph const&, model::OutletId);

}  // namespace leat::body
