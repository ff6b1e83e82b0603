#pragma once
#include <map>
#include <utility>
#include <vector>

#include "engine/body/route_graph.hpp"

// Route graphs written down edge by edge, for what is asked of their shape alone.
namespace leat::drawn {

struct HandStep {
  std::uint32_t from = 0, to = 0;
  bool is_sure = true;
};

// Positions 0 to size - 1 at feet cells of the same number; those without a step end as `ends`
// says, at rest on the dry where it says nothing. `outlets` makes positions the ends of a route.
body::RouteGraph hand_graph(std::uint32_t size, std::vector<HandStep> const& steps,
                            std::map<std::uint32_t, model::OutletId> const& outlets = {},
                            std::map<std::uint32_t, body::End> const& ends = {},
                            std::vector<std::uint32_t> starts = {0});

}  // namespace leat::drawn
