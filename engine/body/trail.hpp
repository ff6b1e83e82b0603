#pragma once
#include <functional>
#include <optional>

#include "engine/body/route_graph.hpp"

namespace leat::body {

// A walk from a start through the route graph: positions as indices, and between each two the step
// taken, as an index into RouteGraph::steps. One more position than steps.
struct Trail {
  std::vector<std::uint32_t> positions;
  std::vector<std::uint32_t> steps;
};

// A shortest trail from a start to the first position that `is_goal` accepts; none if no position
// is.
std::optional<Trail> shortest_trail(RouteGraph const&,
                                    std::function<bool(std::uint32_t)> const& is_goal);

}  // namespace leat::body
