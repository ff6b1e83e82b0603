#include "engine/explore/guarding.hpp"

#include <algorithm>
#include <iterator>
#include <map>
#include <tuple>

namespace leat::explore {

namespace {

using Nodes = std::vector<std::uint32_t>;

// What is gathered of one danger.
struct Gathered {
  Danger danger;
  Nodes nodes;  // the states in which it threatens
};

using Kind =
    std::tuple<Danger::Kind, model::InletId, model::ProfileId, std::optional<model::OutletId>>;

// What is gathered of one change.
struct Change {
  std::optional<int> wait = 0, clearing = 0;
  Nodes nodes;
  std::map<Kind, Gathered> dangers;
};

void unite(Danger& all, Danger const& more) {
  std::vector<model::Cell> cells;
  std::set_union(all.cells.begin(), all.cells.end(), more.cells.begin(), more.cells.end(),
                 std::back_inserter(cells));
  all.cells = std::move(cells);
}

void add(Change& change, std::vector<Danger> const& dangers, std::uint32_t node) {
  for (auto const& danger : dangers) {
    Kind const kind{danger.kind, danger.inlet, danger.profile, danger.outlet};
    auto& gathered = change.dangers.try_emplace(kind, Gathered{danger, {}}).first->second;
    unite(gathered.danger, danger);
    gathered.nodes.push_back(node);
  }
}

RowSet rows_of(Explored const& explored, Nodes const& nodes) {
  RowSet rows(explored.variable_count());
  for (auto node : nodes) rows.insert(explored.row_of(node));
  return rows;
}

// Nodes are numbered breadth first: the smallest is the nearest.
Example nearest_of(Explored const& explored, Nodes const& nodes) {
  return example_of(explored, *std::min_element(nodes.begin(), nodes.end()));
}

}  // namespace

// Every occurrence of every switching is put to the change it is one of.
// Cost: one look at each of them for each of its dangers.
std::vector<Guard> guards(Explored const& explored, Switchings const& switchings,
                          std::vector<Clearing> const& trips) {
  std::map<std::pair<std::size_t, bool>, Change> changes;  // by event, off after on
  auto const& codes = explored.states.codes;
  auto const& nodes = explored.histories.nodes;
  for (auto const& switching : switchings.all) {
    for (auto const& [node, event] : switching.occurrences) {
      bool const goes_off = (codes[nodes[node].state] >> event & 1u) != 0;
      auto& change = changes[{event, goes_off}];
      change.nodes.push_back(node);
      change.wait = longer(change.wait, longest(trips[switching.water]));
      change.clearing = longer(change.clearing, longest(switching.clearing));
      add(change, switching.dangers, node);
    }
  }
  std::vector<Guard> list;
  for (auto& [key, change] : changes) {
    Guard guard;
    guard.event = explored.machine.variables()[key.first];
    guard.goes_on = !key.second;
    guard.rows = rows_of(explored, change.nodes);
    guard.wait = change.wait;
    guard.clearing = change.clearing;
    guard.example = nearest_of(explored, change.nodes);
    for (auto& [kind, gathered] : change.dangers) {
      guard.threats.push_back({std::move(gathered.danger), rows_of(explored, gathered.nodes),
                               nearest_of(explored, gathered.nodes)});
    }
    list.push_back(std::move(guard));
  }
  return list;
}

}  // namespace leat::explore
