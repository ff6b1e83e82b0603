#include "engine/works/logic_findings.hpp"

#include <algorithm>
#include <map>

#include "engine/findings/families.hpp"
#include "engine/logic/settled_circuit.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

// Memory and promises that have some signal in common, in what they follow from: whatever else is
// flipped goes its own way, and can be put back.
std::vector<std::vector<model::ExpressionId>> entangled(
    logic::Cones& cones, std::vector<model::ExpressionId> const& of) {
  std::vector<std::size_t> group(of.size());
  std::map<model::SignalId, std::size_t> first_with;
  auto const group_of = [&](std::size_t root) {
    while (group[root] != root) root = group[root];
    return root;
  };
  for (std::size_t root = 0; root < of.size(); ++root) {
    group[root] = root;
    for (auto signal : cones.of({of[root]}).signals) {
      auto const other = group_of(first_with.try_emplace(signal, root).first->second);
      group[group_of(root)] = other;
    }
  }
  std::map<std::size_t, std::vector<model::ExpressionId>> groups;
  for (std::size_t root = 0; root < of.size(); ++root) groups[group_of(root)].push_back(of[root]);
  std::vector<std::vector<model::ExpressionId>> found;
  for (auto& [first, roots] : groups) found.push_back(std::move(roots));
  return found;
}

// A part of the logic by itself, explored state by state, as a junction's is.
class LogicByStates {
 public:
  LogicByStates(model::Design const& plant, logic::Cone cone, Conditions& conditions)
      : plant_(plant),
        conditions_(conditions),
        cone_(std::move(cone)),
        settled_(logic::settled_circuit(cone_.circuit)),
        variables_(logic::variables_of(settled_)) {}

  bool fits() const {
    return variables_.size() <= static_cast<std::size_t>(logic::RowSet::most_inputs) &&
           logic::variables_of(cone_.circuit).size() <= logic::Machine::most_variables;
  }

  // None where it does not come to rest as built, or has too many states.
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
    std::sort(finding.signals.begin(), finding.signals.end());
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
  if (!conditions.has_memory() && plant.circuit.nevers.empty()) return found;
  auto circuit = plant.circuit;
  auto roots = circuit.nevers;
  for (model::SignalId signal = 0; signal < circuit.signals.size(); ++signal) {
    if (circuit.signals[signal].is_memory() && conditions.follows_from(signal))
      roots.push_back(circuit.add({model::Operator::signal, signal, 0}));
  }
  bool is_all_explored = true;
  logic::Cones cones(circuit);
  for (auto const& part : entangled(cones, roots)) {
    LogicByStates logic(plant, cones.of(part), conditions);
    auto by_states = logic.fits() ? logic.find() : std::nullopt;
    is_all_explored = is_all_explored && by_states;
    if (by_states) std::move(by_states->begin(), by_states->end(), std::back_inserter(found));
  }
  if (!is_all_explored)
    left_out.insert(left_out.end(), {FindingKind::no_return, FindingKind::unreached_state});
  if (conditions.is_reachable_known())
    add_twins(plant, conditions, found);
  else
    left_out.push_back(FindingKind::twin_signals);
  return found;
}

}  // namespace leat::works
