#include "engine/works/idle_signals.hpp"

#include <algorithm>

#include "engine/logic/restriction.hpp"
#include "engine/logic/truth.hpp"

namespace leat::works {

using logic::Diagram;

namespace {

// Whether the function is otherwise between two combinations that can come about and differ in this
// variable alone.
bool depends_on(Diagram& diagram, Function f, Diagram::Level level, Function reachable) {
  auto const at = [&](Function g, bool is_on) { return logic::cofactor(diagram, g, level, is_on); };
  auto const both_reached = diagram.both(at(reachable, false), at(reachable, true));
  return diagram.both(diagram.differ(at(f, false), at(f, true)), both_reached) != Diagram::never;
}

// The variables that some passage depends on: those that are seen to matter; for the others
// passages are looked at until none is left. None where that would take too long.
std::optional<std::vector<bool>> tested_variables(WorksJudgement const& judged, Reached& seen) {
  constexpr std::size_t most_nodes = std::size_t{1} << 23;  // looked at
  auto& conditions = *judged.conditions;
  auto& diagram = conditions.diagram();
  auto const reachable = conditions.reachable();
  auto is_tested =
      judged.passages.variables_that_matter(seen, conditions.variables().size(), reachable);
  auto left = std::count(is_tested.begin(), is_tested.end(), false);
  std::size_t nodes = 0;
  for (std::size_t p = 0; p < judged.passages.size() && left > 0; ++p) {
    auto const& passage = judged.passages[p];
    std::vector<Function> functions{passage.trapped, passage.spilled, passage.unsure,
                                    passage.barred};
    for (auto const& end : passage.ends) functions.push_back(end.condition);
    std::size_t each = 0;
    for (auto const& f : functions) each += diagram.size(f);
    for (auto level : logic::support(diagram, functions)) {
      if (is_tested[level]) continue;
      nodes += each;
      if (nodes > most_nodes || diagram.has_run_out()) return std::nullopt;
      is_tested[level] = std::any_of(functions.begin(), functions.end(), [&](Function f) {
        return depends_on(diagram, f, level, reachable);
      });
      left -= is_tested[level] ? 1 : 0;
    }
  }
  return is_tested;
}

// The signals that stand in what switches some cell, by signal.
std::vector<bool> switching_signals(model::Design const& plant) {
  std::vector<model::ExpressionId> controls;
  for (auto const& fill : plant.fills)
    if (fill.control) controls.push_back(*fill.control);
  return logic::used_signals(plant.circuit, controls);
}

// Whether some other memory follows from it.
bool feeds_memory(model::Circuit const& circuit, Conditions const& conditions,
                  model::SignalId signal) {
  std::vector<model::ExpressionId> roots;
  for (auto other : conditions.variables()) {
    auto const& memory = circuit.signals[other];
    if (other == signal || !memory.is_memory()) continue;
    roots.push_back(memory.definition);
    if (memory.kind == model::SignalKind::latch) roots.push_back(memory.reset);
  }
  return logic::used_signals(circuit, roots)[signal];
}

// Of a variable on which no passage depends: whether it is idle as findings/idle_signals.cpp has
// it. An input can work through memory; memory that never differs alone is taken to matter.
bool is_idle(model::Design const& plant, Conditions& conditions, Diagram::Level level) {
  auto const signal = conditions.variables()[level];
  if (plant.circuit.signals[signal].is_input()) return !conditions.changes_memory(signal);
  auto& diagram = conditions.diagram();
  auto const reachable = conditions.reachable();
  auto const pairs = diagram.both(logic::cofactor(diagram, reachable, level, false),
                                  logic::cofactor(diagram, reachable, level, true));
  return pairs != Diagram::never && !feeds_memory(plant.circuit, conditions, signal);
}

}  // namespace

std::optional<std::vector<PlantFinding>> idle_signals(model::Design const& plant, Reached& seen,
                                                      WorksJudgement const& judged) {
  auto& conditions = *judged.conditions;
  bool const is_known =
      !conditions.has_memory() || (conditions.is_reachable_known() && !conditions.has_restless());
  bool const is_exact = is_known && !is_incomplete(judged) && !judged.may_be_wider &&
                        !conditions.diagram().has_run_out();
  auto const is_tested = is_exact ? tested_variables(judged, seen) : std::nullopt;
  if (!is_tested || conditions.diagram().has_run_out()) return std::nullopt;
  auto const is_switching = switching_signals(plant);
  std::vector<model::SignalId> idle;
  for (Diagram::Level level = 0; level < is_tested->size(); ++level) {
    auto const signal = conditions.variables()[level];
    if (!is_switching[signal] || (*is_tested)[level]) continue;
    if (!conditions.has_memory() || is_idle(plant, conditions, level)) idle.push_back(signal);
  }
  std::sort(idle.begin(), idle.end());
  std::vector<PlantFinding> found;
  for (auto signal : idle) {
    auto finding = findings::finding_of(model::FindingKind::idle_signal);
    finding.signals.push_back(signal);
    found.push_back({std::move(finding), conditions.reachable()});
  }
  return found;
}

}  // namespace leat::works
