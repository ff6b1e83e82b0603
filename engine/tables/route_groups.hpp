#pragma once
#include <vector>

#include "engine/tables/routes.hpp"

namespace leat::tables {

// All rows in which one body's route from one inlet is the same in everything, trapped cells
// included, and these rows as an irredundant sum.
struct RouteGroup {
  std::uint32_t setting = 0;  // one of theirs
  logic::RowSet rows;
  std::vector<logic::Cube> condition;
};

// In the order of their first row; together they hold every row exactly once. Cost: settings times
// groups, one cover a group.
std::vector<RouteGroup> route_groups(explore::Combinations const&, RouteTable const&,
                                     model::InletId, model::ProfileId);

}  // namespace leat::tables
