#include "engine/works/plant_findings.hpp"

#include <algorithm>
#include <unordered_set>

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

// Outlets at which bodies would have arrived, and none ever does.
void unreached_outlets(model::Design const& plant, Network const& network,
                       WorksJudgement const& judged, std::vector<PlantFinding>& found) {
  auto const& conditions = *judged.conditions;
  std::vector<bool> is_reached(plant.outlets.size(), false);
  for (auto const& passage : judged.passages) {
    for (auto const& end : passage.ends) {
      bool const can_be = conditions.diagram().has_run_out() || end.condition != Diagram::never;
      is_reached[end.outlet] = is_reached[end.outlet] || can_be;
    }
  }
  for (model::OutletId outlet = 0; outlet < is_reached.size(); ++outlet) {
    if (is_reached[outlet] || network.join_of(outlet)) continue;
    found.push_back({FindingKind::unreached_outlet, {}, {outlet}, {}, conditions.reachable()});
  }
}

// The levels that some function tests.
std::vector<bool> tested_levels(Diagram const& diagram, std::vector<Function> const& functions,
                                std::size_t levels) {
  std::vector<bool> is_tested(levels, false);
  std::unordered_set<std::uint32_t> seen;
  std::vector<Function> open = functions;
  while (!open.empty()) {
    auto const f = open.back();
    open.pop_back();
    auto const level = diagram.level(f);
    if (level == Diagram::below_all || !seen.insert(f.edge >> 1).second) continue;
    is_tested[level] = true;
    auto const [off, on] = diagram.branches(f, level);
    open.push_back(off);
    open.push_back(on);
  }
  return is_tested;
}

// Of the signals that switch some cell, those that no passage depends on. An input can also work
// through memory, so what memory follows from is no idle input.
void idle_signals(model::Design const& plant, WorksJudgement const& judged,
                  std::vector<PlantFinding>& found) {
  auto const& conditions = *judged.conditions;
  bool const has_memory =
      std::any_of(conditions.variables().begin(), conditions.variables().end(),
                  [&](auto signal) { return plant.circuit.signals[signal].is_memory(); });
  if (has_memory || !judged.too_large.empty() || conditions.diagram().has_run_out()) return;
  std::vector<Function> functions;
  for (auto const& passage : judged.passages) {
    for (auto const& end : passage.ends) functions.push_back(end.condition);
    functions.insert(functions.end(),
                     {passage.trapped, passage.spilled, passage.unsure, passage.barred});
  }
  auto const is_tested =
      tested_levels(conditions.diagram(), functions, conditions.variables().size());
  PlantFinding finding{FindingKind::idle_signal, {}, {}, {}, conditions.reachable()};
  for (std::size_t level = 0; level < is_tested.size(); ++level) {
    if (!is_tested[level]) finding.signals.push_back(conditions.variables()[level]);
  }
  std::sort(finding.signals.begin(), finding.signals.end());
  if (!finding.signals.empty()) found.push_back(std::move(finding));
}

}  // namespace

std::vector<PlantFinding> plant_findings(model::Design const& plant, Network const& network,
                                         WorksJudgement const& judged) {
  std::vector<PlantFinding> found;
  unreached_outlets(plant, network, judged, found);
  idle_signals(plant, judged, found);
  return found;
}

}  // namespace leat::works
