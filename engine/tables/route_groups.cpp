#include "engine/tables/route_groups.hpp"

#include <algorithm>

#include "engine/logic/minimal_cover.hpp"

namespace leat::tables {

std::vector<RouteGroup> groups_of(
    explore::Combinations const& combinations,
    std::function<bool(std::uint32_t, std::uint32_t)> const& are_alike) {
  std::vector<RouteGroup> groups;
  std::vector<std::size_t> group_of(combinations.situations.size());
  for (std::uint32_t s = 0; s < combinations.situations.size(); ++s) {
    auto const same = std::find_if(groups.begin(), groups.end(), [&](RouteGroup const& group) {
      return are_alike(group.situation, s);
    });
    group_of[s] = static_cast<std::size_t>(same - groups.begin());
    if (same == groups.end())
      groups.push_back({s, logic::RowSet(combinations.reachable.inputs()), {}});
  }
  for (logic::Row row = 0; row < combinations.situation_of_row.size(); ++row) {
    auto const situation = combinations.situation_of_row[row];
    if (situation != explore::Combinations::never) groups[group_of[situation]].rows.insert(row);
  }
  auto free = ~combinations.reachable;
  for (auto& group : groups) {
    group.condition = logic::minimal_cover(group.rows, group.rows | free).cubes;
    free &= ~logic::rows_of(group.condition, combinations.reachable.inputs());
  }
  return groups;
}

std::vector<RouteGroup> route_groups(explore::Combinations const& combinations,
                                     RouteTable const& routes, model::InletId inlet,
                                     model::ProfileId profile) {
  return groups_of(combinations, [&](std::uint32_t a, std::uint32_t b) {
    return routes.at(a, inlet, profile) == routes.at(b, inlet, profile);
  });
}

}  // namespace leat::tables
