#include "engine/compare/ground.hpp"

#include <algorithm>
#include <unordered_map>

#include "engine/logic/cone.hpp"
#include "engine/logic/machine.hpp"
#include "engine/logic/restriction.hpp"
#include "engine/logic/settled_circuit.hpp"

namespace leat::compare {

using logic::Diagram;
using model::ExpressionId;
using model::SignalId;

namespace {

constexpr std::size_t most_states_searched = std::size_t{1} << 17;

// What the results of a revision follow from, in the joint circuit.
void add_roots(Ground::Revision const& revision, std::vector<SignalId> const& signals,
               std::vector<ExpressionId> const& expressions, model::Circuit& joint,
               std::vector<ExpressionId>& roots) {
  for (auto const& fill : revision.design.fills) {
    if (fill.control) roots.push_back(expressions[*fill.control]);
  }
  for (auto never : revision.design.circuit.nevers) roots.push_back(expressions[never]);
  for (auto variable : revision.variables)
    roots.push_back(joint.add({model::Operator::signal, signals[variable], 0}));
}

}  // namespace

Ground::Ground(Revision const& before, Revision const& after,
               Counterparts<SignalId> const& counterparts, std::size_t most_nodes)
    : joint_(joined(before.design.circuit, after.design.circuit, counterparts)) {
  std::vector<ExpressionId> roots;
  add_roots(after, joint_.after, joint_.after_expressions, joint_.circuit, roots);
  add_roots(before, joint_.before, joint_.before_expressions, joint_.circuit, roots);
  // Memory of the same name side by side, so that their functions stay small.
  std::vector<SignalId> order;
  for (auto variable : after.variables) order.push_back(joint_.after[variable]);
  for (SignalId s = 0; s < counterparts.size(); ++s) {
    if (!counterparts[s]) continue;
    auto const at = std::find(order.begin(), order.end(), joint_.after[*counterparts[s]]);
    if (at != order.end()) order.insert(at + 1, joint_.before[s]);
  }
  lay(roots, order, most_nodes);
  leave_out_copies(counterparts);
}

namespace {

JointCircuit by_itself(model::Circuit const& circuit) {
  JointCircuit joint{circuit, {}, {}, {}, {}};
  for (SignalId s = 0; s < circuit.signals.size(); ++s) joint.after.push_back(s);
  for (ExpressionId e = 0; e < circuit.expressions.size(); ++e)
    joint.after_expressions.push_back(e);
  joint.before = joint.after;
  joint.before_expressions = joint.after_expressions;
  return joint;
}

}  // namespace

Ground::Ground(Revision const& only, std::size_t most_nodes)
    : joint_(by_itself(only.design.circuit)) {
  std::vector<ExpressionId> roots;
  add_roots(only, joint_.after, joint_.after_expressions, joint_.circuit, roots);
  lay(roots, only.variables, most_nodes);
}

void Ground::lay(std::vector<ExpressionId> const& roots, std::vector<SignalId> const& order,
                 std::size_t most_nodes) {
  conditions_ = std::make_unique<works::Conditions>(joint_.circuit, roots, order, most_nodes);
  cone_ = logic::Cones(joint_.circuit).of(roots);
  for (auto const& signal : cone_.circuit.signals) has_memory_ = has_memory_ || signal.is_memory();
  reachable_ = conditions_->reachable();
}

void Ground::leave_out_copies(Counterparts<SignalId> const& counterparts) {
  auto const& variables = conditions_->variables();
  auto const level_of = [&](SignalId joint) {
    auto const at = std::find(variables.begin(), variables.end(), joint);
    return static_cast<Diagram::Level>(at - variables.begin());
  };
  for (SignalId s = 0; s < counterparts.size(); ++s) {
    if (!counterparts[s]) continue;
    auto const before = joint_.before[s], after = joint_.after[*counterparts[s]];
    auto const level = level_of(before);
    if (before == after || level == variables.size() || level_of(after) == variables.size())
      continue;
    auto const differ =
        diagram().differ(conditions_->of_signal(before), conditions_->of_signal(after));
    if (diagram().both(conditions_->reachable(), differ) == Diagram::never)
      copies_.push_back(level);
  }
  std::sort(copies_.begin(), copies_.end());
  reachable_ = widest(Diagram::always);
}

Function Ground::widest(Function f) {
  auto const within = diagram().both(f, conditions_->reachable());
  return copies_.empty() ? within : logic::exists(diagram(), within, copies_);
}

bool Ground::is_whole() const {
  return conditions_->is_reachable_known() && !conditions_->has_restless() &&
         !conditions_->diagram().has_run_out();
}

works::Instance Ground::as_built() const {
  works::Instance built;
  for (auto variable : conditions_->variables())
    built.push_back(joint_.circuit.signals[variable].starts_on);
  return built;
}

// Each settled state the joint machine reaches, in the order of the shortest ways to it.
void Ground::search() {
  is_searched_ = true;
  if (logic::variables_of(cone_.circuit).size() > logic::Machine::most_variables) return;
  logic::Machine const machine(cone_.circuit);
  auto states = explore::reach(machine, most_states_searched, explore::Successors::left_out);
  if (!states.is_complete || states.size() == 0) return;
  std::unordered_map<SignalId, SignalId> own_of;
  for (SignalId own = 0; own < cone_.signals.size(); ++own) own_of[cone_.signals[own]] = own;
  for (auto code : states.codes) {
    auto const values = machine.values(code);
    works::Instance instance;
    for (auto variable : conditions_->variables()) instance.push_back(values[own_of[variable]]);
    instances_.push_back(std::move(instance));
  }
  for (std::size_t event = 0; event < machine.input_count(); ++event)
    events_.push_back(cone_.signals[machine.variables()[event]]);
  states_ = std::move(states);
}

std::optional<Ground::Example> Ground::nearest(Function where) {
  if (where == Diagram::never) return std::nullopt;
  if (has_memory_ && !is_searched_) search();
  if (states_) {
    for (std::uint32_t state = 0; state < instances_.size(); ++state) {
      if (!diagram().is_true(where, instances_[state])) continue;
      std::vector<SignalId> flips;
      for (auto event : states_->events_to(state)) flips.push_back(events_[event]);
      return Example{instances_[state], std::move(flips)};
    }
    return std::nullopt;
  }
  auto const built = as_built();
  auto instance = works::nearest(diagram(), where, built);
  if (!instance || has_memory_) {
    return instance ? std::optional(Example{*instance, std::nullopt}) : std::nullopt;
  }
  std::vector<SignalId> flips;
  for (std::size_t level = 0; level < built.size(); ++level) {
    if ((*instance)[level] != built[level]) flips.push_back(conditions_->variables()[level]);
  }
  return Example{std::move(*instance), std::move(flips)};
}

}  // namespace leat::compare
