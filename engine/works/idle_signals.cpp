#include "engine/works/idle_signals.hpp"

#include <algorithm>
#include <map>

#include "engine/logic/restriction.hpp"
#include "engine/logic/truth.hpp"
#include "engine/model/conditions.hpp"

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

// Whether a body stays in unlike places in two settings of the part that are one to its passages.
bool do_traps_differ(Judgement const& part, std::size_t inlets, std::size_t profiles) {
  for (model::InletId inlet = 0; inlet < inlets; ++inlet) {
    for (model::ProfileId profile = 0; profile < profiles; ++profile) {
      std::map<std::vector<model::OutletId>, std::vector<model::Cell>> trapped;
      for (std::size_t s = 0; s < part.combinations.situations.size(); ++s) {
        auto const& route = part.routes.at(s, inlet, profile);
        if (route.trapped.empty()) continue;
        auto const known = trapped.try_emplace(route.outlets, route.trapped).first;
        if (known->second != route.trapped) return true;
      }
    }
  }
  return false;
}

// The variables that may change where bodies stay, though no passage tells it.
std::vector<bool> moving_traps(model::Design const& plant, WorksJudgement const& judged) {
  auto const& islands = judged.islands;
  std::vector<bool> do_differ;
  for (std::size_t part = 0; part < islands.parts.size(); ++part) {
    auto const inlets = islands.parts[part].design.inlets.size();
    do_differ.push_back(judged.by_regions[part] ||
                        do_traps_differ(judged.parts[part], inlets, plant.profiles.size()));
  }
  auto const& conditions = *judged.conditions;
  std::vector<bool> are_moving(conditions.variables().size(), false);
  for (auto const& copy : islands.copies) {
    if (!do_differ[copy.part]) continue;
    auto const inputs = inputs_of(copy, support(islands.parts[copy.part]), conditions);
    for (auto level : logic::support(conditions.diagram(), inputs)) are_moving[level] = true;
  }
  return are_moving;
}

// The same of joins: those that lead to an inlet from which on bodies may stay somewhere.
std::vector<bool> leading_to_traps(model::Design const& plant, WorksJudgement const& judged) {
  auto& diagram = judged.conditions->diagram();
  std::vector<Function> arriving;
  for (auto const& join : plant.joins) {
    for (model::ProfileId profile = 0; profile < plant.profiles.size(); ++profile) {
      if (judged.passages.from(Prospect::trapped, join.inlet, profile) == Diagram::never) continue;
      arriving.push_back(judged.arrivals.at(join.inlet, profile, judged.passages, diagram));
    }
  }
  std::vector<bool> are_leading(judged.conditions->variables().size(), false);
  for (auto level : logic::support(diagram, arriving)) are_leading[level] = true;
  return are_leading;
}

// By signal, whether it is for this plant to call it idle: what switches something here is, though
// it may well work elsewhere; what does not is left to those who use it.
std::vector<bool> signals_to_tell(model::Design const& plant) {
  std::vector<model::ExpressionId> controls;
  for (auto const& fill : plant.fills)
    if (fill.control) controls.push_back(*fill.control);
  auto const is_switching = logic::used_signals(plant.circuit, controls);
  std::vector<bool> is_to_tell(plant.circuit.signals.size(), true);
  for (auto signal : plant.used_elsewhere) is_to_tell[signal] = is_switching[signal];
  return is_to_tell;
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
  auto& diagram = conditions.diagram();
  auto const reachable = conditions.reachable();
  if (plant.circuit.signals[signal].is_input())
    return conditions.flippable(signal) != Diagram::never && !conditions.changes_memory(signal);
  auto const pairs = diagram.both(logic::cofactor(diagram, reachable, level, false),
                                  logic::cofactor(diagram, reachable, level, true));
  return pairs != Diagram::never && !feeds_memory(plant.circuit, conditions, signal);
}

}  // namespace

std::vector<PlantFinding> idle_signals(model::Design const& plant, Reached& seen,
                                       WorksJudgement const& judged,
                                       std::vector<model::FindingKind>& left_out) {
  auto& conditions = *judged.conditions;
  bool const is_known = conditions.is_reachable_known() && !conditions.may_be_restless();
  bool const is_exact = is_known && !is_incomplete(judged) && !judged.may_be_wider &&
                        !conditions.diagram().has_run_out();
  auto const is_tested = is_exact ? tested_variables(judged, seen) : std::nullopt;
  bool is_all_told = is_tested && !conditions.diagram().has_run_out();
  std::vector<model::SignalId> idle;
  if (is_all_told) {
    auto const is_to_tell = signals_to_tell(plant), is_moving = moving_traps(plant, judged);
    std::optional<std::vector<bool>> is_leading;  // once something seems idle
    auto is_used = logic::used_signals(plant.circuit, model::conditions_of(plant));
    for (Diagram::Level level = 0; level < is_tested->size(); ++level) {
      auto const signal = conditions.variables()[level];
      is_used[signal] = true;
      if (!is_to_tell[signal] || (*is_tested)[level] || !is_idle(plant, conditions, level))
        continue;
      if (!is_leading) is_leading = leading_to_traps(plant, judged);
      bool const may_move = is_moving[level] || (*is_leading)[level];
      if (!may_move) idle.push_back(signal);
      is_all_told = is_all_told && !may_move;
    }
    is_all_told = is_all_told && !conditions.diagram().has_run_out();
    for (model::SignalId signal = 0; signal < is_used.size(); ++signal)
      if (!is_used[signal] && is_to_tell[signal]) idle.push_back(signal);
  }
  if (!is_all_told) left_out.push_back(model::FindingKind::idle_signal);
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
