#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/model/design.hpp"

namespace leat::works {

using Ticks = std::int64_t;

// What a body's way from one inlet through its island to one outlet takes, in one combination.
struct Stretch {
  model::InletId inlet = 0;
  model::OutletId outlet = 0;
  std::optional<Ticks> quickest, longest;  // none without a bound
};

// Where bodies that came in at one inlet leave the plant, and after how long: the shortest and the
// longest of all ways there, joins included.
struct Arrival {
  model::OutletId outlet = 0;  // joined to nothing
  std::optional<Ticks> quickest, longest;
  bool has_untold = false;  // some way leads over a join whose time is not said: it counts nothing
};

// The arrivals from an inlet, by outlet, over the stretches from it and from all that joins lead
// to.
//
// Idea: stretches and the joins behind them are the arrows of a graph of inlets. Quickest: E. W.
// Dijkstra's search (1959). Longest: over the inlets from which the outlet can be reached, in
// topological order; none where they go round. Cost: stretches times outlets.
std::vector<Arrival> arrivals(model::Design const& plant, model::InletId from,
                              std::vector<Stretch> const&);

}  // namespace leat::works
