#pragma once
#include <vector>

#include "engine/tables/routes.hpp"

namespace leat::tables {

// All rows in which one body's route from one inlet is the same in everything, trapped cells
// included, and these rows as an irredundant sum.
struct RouteGroup {
  std::uint32_t situation = 0;  // one of theirs
  logic::RowSet rows;
  std::vector<logic::Cube> condition;
};

// In the order of their first row; together they hold every reachable row exactly once, and are
// free elsewhere as destinations are. Cost: situations times groups, one cover a group.
std::vector<RouteGroup> route_groups(explore::Combinations const&, RouteTable const&,
                                     model::InletId, model::ProfileId);

}  // namespace leat::tables
