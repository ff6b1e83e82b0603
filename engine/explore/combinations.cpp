#include "engine/explore/combinations.hpp"

#include <algorithm>
#include <map>

namespace leat::explore {

Row Combinations::row_of(std::vector<bool> const& signals) const {
  Row row = 0;
  for (auto variable : variables) row = row << 1 | (signals[variable] ? 1u : 0u);
  return row;
}

RowSet Combinations::rows_where(std::function<bool(std::uint32_t)> const& chosen) const {
  std::vector<bool> is_chosen(situations.size());
  for (std::uint32_t s = 0; s < situations.size(); ++s) is_chosen[s] = chosen(s);
  RowSet rows(reachable.inputs());
  for (Row row = 0; row < situation_of_row.size(); ++row) {
    auto const situation = situation_of_row[row];
    if (situation != never && is_chosen[situation]) rows.insert(row);
  }
  return rows;
}

RowSet Combinations::rows_with(std::vector<std::uint32_t> const& waters) const {
  return rows_where([&](std::uint32_t situation) {
    auto const& own = situations[situation];
    return std::any_of(own.begin(), own.end(), [&](std::uint32_t water) {
      return std::binary_search(waters.begin(), waters.end(), water);
    });
  });
}

Combinations combine(logic::Machine const& machine, States const& states,
                     Histories const& histories, std::vector<model::SignalId> variables) {
  Combinations result;
  auto const count = static_cast<int>(variables.size());
  result.variables = std::move(variables);
  result.reachable = RowSet(count);
  result.situation_of_row.assign(std::size_t{1} << count, Combinations::never);
  for (auto code : states.codes) result.row_of_state.push_back(result.row_of(machine.values(code)));
  std::vector<std::vector<std::uint32_t>> waters_of_row(result.situation_of_row.size());
  for (auto const& node : histories.nodes) {
    waters_of_row[result.row_of_state[node.state]].push_back(node.water);
  }
  std::map<std::vector<std::uint32_t>, std::uint32_t> numbers;
  for (Row row = 0; row < waters_of_row.size(); ++row) {
    auto& waters = waters_of_row[row];
    if (waters.empty()) continue;
    result.reachable.insert(row);
    std::sort(waters.begin(), waters.end());
    auto const next = static_cast<std::uint32_t>(result.situations.size());
    auto const [entry, is_new] = numbers.try_emplace(waters, next);
    if (is_new) result.situations.push_back(waters);
    result.situation_of_row[row] = entry->second;
  }
  return result;
}

}  // namespace leat::explore
