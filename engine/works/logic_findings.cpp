#include "engine/works/logic_findings.hpp"

#include <algorithm>
#include <map>

#include "engine/findings/families.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/model/conditions.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

// The logic alone, explored state by state, as a junction's is.
class LogicByStates {
 public:
  LogicByStates(model::Design const& plant, Conditions& conditions)
      : plant_(plant),
        conditions_(conditions),
        cone_(logic::Cones(plant.circuit).of(model::conditions_of(plant))),
        settled_(logic::settled_circuit(cone_.circuit)),
        variables_(logic::variables_of(settled_)) {}

  bool fits() const {
    return variables_.size() <= static_cast<std::size_t>(logic::RowSet::most_inputs) &&
           logic::variables_of(cone_.circuit).size() <= logic::Machine::most_variables;
  }

  // None where it never comes to rest as built, or has too many states.
  std::optional<std::vector<PlantFinding>> find() {
    logic::Machine const machine(cone_.circuit);
    auto const states = explore::reach(machine);
    if (states.size() == 0 || !states.is_complete) return std::nullopt;
    explore::Histories const no_waters;
    auto const combinations = combinations_of(machine, states);
    logic::Truth const truth(settled_, variables_);
    explore::Explored const explored{plant_, machine, states, no_waters, combinations, truth};
    std::vector<PlantFinding> found;
    for (auto& finding : findings::no_returns(explored)) add(std::move(finding), found);
    for (auto& finding : findings::unreached_states(explored)) add(std::move(finding), found);
    return found;
  }

 private:
  explore::Combinations combinations_of(logic::Machine const& machine,
                                        explore::States const& states) const {
    explore::Combinations combinations;
    combinations.variables = variables_;
    combinations.reachable = logic::RowSet(static_cast<int>(variables_.size()));
    combinations.situation_of_row.assign(std::size_t{1} << variables_.size(),
                                         explore::Combinations::never);
    for (auto code : states.codes) {
      combinations.row_of_state.push_back(combinations.row_of(machine.values(code)));
      combinations.reachable.insert(combinations.row_of_state.back());
    }
    return combinations;
  }

  void add(findings::Finding finding, std::vector<PlantFinding>& found) {
    std::vector<Function> inputs;
    for (auto variable : variables_)
      inputs.push_back(conditions_.of_signal(cone_.signals[variable]));
    auto const condition = conditions_.of(finding.rows, inputs);
    for (auto& signal : finding.signals) signal = cone_.signals[signal];
    finding.rows = logic::RowSet(0);
    found.push_back({std::move(finding), condition});
  }

  model::Design const& plant_;
  Conditions& conditions_;
  logic::Cone cone_;
  model::Circuit settled_;
  std::vector<model::SignalId> variables_;  // the cone's
};

// Inputs can be flipped by themselves, so only memory can be always equal. (Wires of places follow
// what the works gives them: that they are equal is meant.)
void add_twins(model::Design const& plant, Conditions& conditions,
               std::vector<PlantFinding>& found) {
  auto& diagram = conditions.diagram();
  auto const reachable = conditions.reachable();
  std::map<std::uint32_t, std::vector<model::SignalId>> groups;
  for (auto variable : conditions.variables()) {
    auto const on = diagram.both(conditions.of_signal(variable), reachable);
    bool const is_told = plant.circuit.signals[variable].kind != model::SignalKind::delay &&
                         on != Diagram::never && on != reachable;
    if (is_told) groups[on.edge].push_back(variable);
  }
  for (auto& [edge, signals] : groups) {
    if (signals.size() < 2) continue;
    auto finding = findings::finding_of(FindingKind::twin_signals);
    std::sort(signals.begin(), signals.end());
    finding.signals = std::move(signals);
    found.push_back({std::move(finding), reachable});
  }
}

}  // namespace

std::vector<PlantFinding> logic_findings(model::Design const& plant, WorksJudgement const& judged,
                                         std::vector<FindingKind>& left_out) {
  auto& conditions = *judged.conditions;
  std::vector<PlantFinding> found;
  auto const& variables = conditions.variables();
  bool const has_memory = std::any_of(variables.begin(), variables.end(), [&](auto variable) {
    return plant.circuit.signals[variable].is_memory();
  });
  if (!has_memory && plant.circuit.nevers.empty()) return found;
  LogicByStates logic(plant, conditions);
  if (auto by_states = logic.fits() ? logic.find() : std::nullopt)
    found = std::move(*by_states);
  else
    left_out.insert(left_out.end(), {FindingKind::no_return, FindingKind::unreached_state});
  if (conditions.is_reachable_known())
    add_twins(plant, conditions, found);
  else
    left_out.push_back(FindingKind::twin_signals);
  return found;
}

}  // namespace leat::works
