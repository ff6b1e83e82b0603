#include <algorithm>
#include <map>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

using explore::Danger;

FindingKind kind_of(Danger::Kind kind) {
  switch (kind) {
    case Danger::Kind::misrouted:
      return FindingKind::misrouting_switch;
    case Danger::Kind::trapped:
      return FindingKind::stranding_switch;
    case Danger::Kind::spilled:
      return FindingKind::spilling_switch;
    case Danger::Kind::crushed:
      break;
  }
  return FindingKind::crushing_switch;
}

template <class Value>
void insert_sorted(std::vector<Value>& values, Value value) {
  auto const at = std::lower_bound(values.begin(), values.end(), value);
  if (at == values.end() || *at != value) values.insert(at, value);
}

void add(Danger const& danger, Finding& finding) {
  insert_sorted(finding.inlets, danger.inlet);
  insert_sorted(finding.profiles, danger.profile);
  if (danger.outlet) insert_sorted(finding.outlets, *danger.outlet);
  for (auto c : danger.cells) insert_sorted(finding.cells, c);
}

}  // namespace

// Switchings come nearest first, so the first one that shows a danger is its example.
std::vector<Finding> switch_dangers(Explored const& explored,
                                    explore::Switchings const& switchings) {
  std::map<std::pair<FindingKind, model::SignalId>, Finding> causes;
  for (auto const& switching : switchings.all) {
    auto const wait = explore::longest(switchings.clearing_of_water[switching.water]);
    for (auto const& danger : switching.dangers) {
      for (auto const& [node, event] : switching.occurrences) {
        auto const kind = kind_of(danger.kind);
        auto const input = explored.machine.variables()[event];
        auto const [cause, is_new] = causes.try_emplace({kind, input}, finding_of(kind));
        auto& finding = cause->second;
        if (is_new) {
          finding.event = input;
          finding.ticks = 0;
          finding.rows = logic::RowSet(explored.variable_count());
          finding.examples = {explore::example_of(explored, node)};
        }
        add(danger, finding);
        finding.rows.insert(explored.row_of(node));
        finding.ticks =
            wait && finding.ticks ? std::optional(std::max(*wait, *finding.ticks)) : std::nullopt;
      }
    }
  }
  std::vector<Finding> findings;
  for (auto& [key, finding] : causes) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace leat::findings
