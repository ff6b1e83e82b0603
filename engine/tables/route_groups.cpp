#include "engine/tables/route_groups.hpp"

#include <algorithm>

namespace leat::tables {

std::vector<RouteGroup> route_groups(explore::Combinations const& combinations,
                                     RouteTable const& routes, model::InletId inlet,
                                     model::ProfileId profile) {
  auto const inputs = static_cast<int>(combinations.inputs.size());
  std::vector<RouteGroup> groups;
  std::vector<std::size_t> group_of(combinations.settings.size());
  for (std::uint32_t s = 0; s < combinations.settings.size(); ++s) {
    auto const same = std::find_if(groups.begin(), groups.end(), [&](RouteGroup const& group) {
      return routes.at(group.setting, inlet, profile) == routes.at(s, inlet, profile);
    });
    group_of[s] = static_cast<std::size_t>(same - groups.begin());
    if (same == groups.end()) groups.push_back({s, logic::RowSet(inputs), {}});
  }
  for (logic::Row row = 0; row < combinations.row_count(); ++row) {
    groups[group_of[combinations.setting_of_row[row]]].rows.insert(row);
  }
  for (auto& group : groups) group.condition = logic::irredundant_cover(group.rows, group.rows);
  return groups;
}

}  // namespace leat::tables
