#include "engine/tables/routes.hpp"

#include <algorithm>

namespace leat::tables {

std::vector<Destination> destinations(explore::Combinations const& combinations,
                                      RouteTable const& routes, model::InletId inlet,
                                      model::ProfileId profile) {
  std::vector<Destination> result;
  std::vector<std::size_t> destination_of(combinations.settings.size());
  for (std::size_t s = 0; s < combinations.settings.size(); ++s) {
    auto const& route = routes.at(s, inlet, profile);
    auto const same = std::find_if(result.begin(), result.end(), [&](Destination const& d) {
      return d.verdict == route.verdict && d.outlets == route.outlets;
    });
    destination_of[s] = static_cast<std::size_t>(same - result.begin());
    if (same == result.end()) {
      result.push_back({route.verdict,
                        route.outlets,
                        logic::RowSet(static_cast<int>(combinations.inputs.size())),
                        {}});
    }
  }
  for (logic::Row row = 0; row < combinations.row_count(); ++row) {
    result[destination_of[combinations.setting_of_row[row]]].rows.insert(row);
  }
  for (auto& d : result) d.condition = logic::irredundant_cover(d.rows, d.rows);
  return result;
}

}  // namespace leat::tables
