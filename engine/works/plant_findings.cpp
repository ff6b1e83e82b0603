#include "engine/works/plant_findings.hpp"

#include <algorithm>

#include "engine/logic/restriction.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

// Outlets at which bodies would have arrived, and none ever does.
void unreached_outlets(model::Design const& plant, WorksJudgement const& judged,
                       std::vector<PlantFinding>& found) {
  auto& diagram = judged.conditions->diagram();
  auto const reachable = judged.conditions->reachable();
  std::vector<bool> is_reached(plant.outlets.size(), false);
  for (auto const& join : plant.joins) is_reached[join.outlet] = true;
  for (auto const& [outlet, condition] : judged.passages.ends_of_all()) {
    bool const can_be = diagram.both(condition, reachable) != Diagram::never;
    is_reached[outlet] = is_reached[outlet] || can_be || diagram.has_run_out();
  }
  for (model::OutletId outlet = 0; outlet < is_reached.size(); ++outlet) {
    if (is_reached[outlet]) continue;
    auto finding = findings::finding_of(FindingKind::unreached_outlet);
    finding.outlets.push_back(outlet);
    found.push_back({std::move(finding), reachable});
  }
}

// The variables that some passage depends on: those that are seen to matter; for the others
// passages are looked at until none is left.
std::vector<bool> tested_variables(WorksJudgement const& judged) {
  auto const& conditions = *judged.conditions;
  auto is_tested =
      judged.passages.variables_that_matter(conditions.variables().size(), conditions.reachable());
  auto left = std::count(is_tested.begin(), is_tested.end(), false);
  for (std::size_t p = 0; p < judged.passages.size() && left > 0; ++p) {
    auto const& passage = judged.passages[p];
    std::vector<Function> functions{passage.trapped, passage.spilled, passage.unsure,
                                    passage.barred};
    for (auto const& end : passage.ends) functions.push_back(end.condition);
    for (auto level : logic::support(conditions.diagram(), functions)) {
      left -= is_tested[level] ? 0 : 1;
      is_tested[level] = true;
    }
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
  bool const is_exact = !has_memory && !is_incomplete(judged) && !judged.may_be_wider;
  if (!is_exact || conditions.diagram().has_run_out()) return;
  auto const is_tested = tested_variables(judged);
  if (conditions.diagram().has_run_out()) return;
  std::vector<model::SignalId> idle;
  for (Diagram::Level level = 0; level < is_tested.size(); ++level) {
    if (!is_tested[level]) idle.push_back(conditions.variables()[level]);
  }
  std::sort(idle.begin(), idle.end());
  for (auto signal : idle) {
    auto finding = findings::finding_of(FindingKind::idle_signal);
    finding.signals.push_back(signal);
    found.push_back({std::move(finding), conditions.reachable()});
  }
}

// Acceptances without a place cover what is wrong with the whole, too; those that nothing answers
// to are told.
void accept(model::Design const& plant, WorksJudgement const& judged,
            std::vector<PlantFinding>& found) {
  std::vector<bool> is_answered(plant.acceptances.size(), false);
  for (auto const& piece : pieces_of(judged)) {
    for (auto const& finding : piece.judged->findings) {
      if (finding.accepted_by) is_answered[*finding.accepted_by] = true;
    }
  }
  for (auto& [finding, condition] : found) {
    for (std::size_t a = 0; a < is_answered.size() && !finding.accepted_by; ++a) {
      auto const& acceptance = plant.acceptances[a];
      bool const covers =
          acceptance.kind == finding.kind && !acceptance.cell && !acceptance.condition;
      if (covers) finding.accepted_by = a;
      is_answered[a] = is_answered[a] || covers;
    }
  }
  for (std::size_t a = 0; a < is_answered.size(); ++a) {
    if (is_answered[a] || !are_findings_complete(judged)) continue;
    auto finding = findings::finding_of(FindingKind::stale_acceptance);
    finding.acceptance = a;
    found.push_back({std::move(finding), judged.conditions->reachable()});
  }
}

}  // namespace

std::vector<PlantFinding> plant_findings(model::Design const& plant, WorksJudgement const& judged) {
  std::vector<PlantFinding> found;
  unreached_outlets(plant, judged, found);
  idle_signals(plant, judged, found);
  accept(plant, judged, found);
  return found;
}

}  // namespace leat::works
