#pragma once
#include "engine/body/route_graph.hpp"

namespace leat::body {

// The strong components of a route graph (Boost.Graph): positions of one component reach each
// other.
struct Components {
  std::vector<std::uint32_t> component_of;  // per position, numbered from 0
  std::uint32_t count = 0;
};
Components strong_components(RouteGraph const&);

// The loops without a way out: components with an inner step and none that leaves, each as its
// positions in ascending order.
std::vector<std::vector<std::uint32_t>> closed_loops(RouteGraph const&);

// The immediate dominator of every position, all starts hanging from one root before them; at_root
// where that root is the dominator. A position that dominates an outlet is a choke point: every
// body passes it.
inline constexpr std::uint32_t at_root = 0xffffffffu;
std::vector<std::uint32_t> immediate_dominators(RouteGraph const&);

}  // namespace leat::body
