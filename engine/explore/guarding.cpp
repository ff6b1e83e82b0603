#include "engine/explore/guarding.hpp"

#include <algorithm>
#include <iterator>
#include <map>

namespace leat::explore {

namespace {

std::optional<int> longer(std::optional<int> a, std::optional<int> b) {
  return a && b ? std::optional(std::max(*a, *b)) : std::nullopt;
}

// Dangers of one kind to the same bodies are one.
void unite(std::vector<Danger>& all, Danger const& danger) {
  auto const same = std::find_if(all.begin(), all.end(), [&](Danger const& known) {
    return known.kind == danger.kind && known.inlet == danger.inlet &&
           known.profile == danger.profile && known.outlet == danger.outlet;
  });
  if (same == all.end()) {
    all.push_back(danger);
    return;
  }
  std::vector<model::Cell> cells;
  std::set_union(same->cells.begin(), same->cells.end(), danger.cells.begin(), danger.cells.end(),
                 std::back_inserter(cells));
  same->cells = std::move(cells);
}

}  // namespace

// Switchings come nearest first, so the first one that shows a danger is the example.
std::vector<Guard> guards(Explored const& explored, Switchings const& switchings,
                          std::vector<Clearing> const& trips) {
  std::map<std::pair<std::size_t, bool>, Guard> found;
  auto const& [design, machine, states, histories, combinations, truth] = explored;
  for (auto const& switching : switchings.all) {
    for (auto const& [node, event] : switching.occurrences) {
      bool const goes_on = (states.codes[histories.nodes[node].state] >> event & 1u) == 0;
      auto const [entry, is_new] = found.try_emplace({event, !goes_on});
      auto& guard = entry->second;
      if (is_new) {
        guard.event = machine.variables()[event];
        guard.goes_on = goes_on;
        guard.rows = RowSet(explored.variable_count());
        guard.wait = guard.clearing = 0;
      }
      bool const is_first_danger = guard.dangers.empty() && !switching.dangers.empty();
      if (is_new || is_first_danger) guard.example = example_of(explored, node);
      guard.rows.insert(explored.row_of(node));
      guard.wait = longer(guard.wait, longest(trips[switching.water]));
      guard.clearing = longer(guard.clearing, longest(switching.clearing));
      for (auto const& danger : switching.dangers) unite(guard.dangers, danger);
    }
  }
  std::vector<Guard> list;
  for (auto& [key, guard] : found) list.push_back(std::move(guard));
  return list;
}

}  // namespace leat::explore
