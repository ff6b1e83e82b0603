#include "engine/explore/combinations.hpp"

#include <unordered_map>

namespace leat::explore {

RowSet Combinations::rows_where(std::function<bool(std::uint32_t)> const& chosen) const {
  std::vector<bool> is_chosen(settings.size());
  for (std::uint32_t s = 0; s < settings.size(); ++s) is_chosen[s] = chosen(s);
  RowSet rows(static_cast<int>(inputs.size()));
  for (Row row = 0; row < row_count(); ++row) {
    if (is_chosen[setting_of_row[row]]) rows.insert(row);
  }
  return rows;
}

Combinations combine(model::Design const& design, logic::Truth const& truth) {
  Combinations result{truth.inputs(), std::vector<std::uint32_t>(truth.row_count()), {}};
  auto const is_drawn = fills_drawn(design);
  std::vector<std::pair<std::size_t, RowSet>> controls;  // of the switched fills
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    if (!is_drawn[f] || !design.fills[f].is_switched()) continue;
    controls.emplace_back(f, truth.of(*design.fills[f].control));
  }
  std::unordered_map<Setting, std::uint32_t> numbers;
  Setting setting(design.fills.size(), false);
  for (Row row = 0; row < truth.row_count(); ++row) {
    for (auto const& [fill, rows] : controls) setting[fill] = rows.contains(row);
    auto const next = static_cast<std::uint32_t>(result.settings.size());
    auto const [entry, is_new] = numbers.try_emplace(setting, next);
    if (is_new) result.settings.push_back(setting);
    result.setting_of_row[row] = entry->second;
  }
  return result;
}

}  // namespace leat::explore
