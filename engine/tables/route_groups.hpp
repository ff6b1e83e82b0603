#pragma once
#include <functional>
#include <vector>

#include "engine/tables/routes.hpp"

namespace leat::tables {

// Rows whose routes are alike, and these rows as a minimal sum.
struct RouteGroup {
  std::uint32_t situation = 0;  // one of theirs
  logic::RowSet rows;
  std::vector<logic::Cube> condition;
};

// Groups the situations that are alike, in the order of their first row. Together the groups hold
// every reachable row exactly once; their conditions are free where no row is reachable, and
// exclude each other there too: each is minimal with the freedom that the earlier ones left. Cost:
// situations times groups, one cover a group.
std::vector<RouteGroup> groups_of(
    explore::Combinations const&,
    std::function<bool(std::uint32_t, std::uint32_t)> const& are_alike);

// All rows in which one body's route from one inlet is the same in everything, trapped cells
// included.
std::vector<RouteGroup> route_groups(explore::Combinations const&, RouteTable const&,
                                     model::InletId, model::ProfileId);

}  // namespace leat::tables
