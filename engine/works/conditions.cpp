#include "engine/works/conditions.hpp"

#include <algorithm>
#include <optional>

#include "engine/contract.hpp"
#include "engine/explore/symbolic_states.hpp"
#include "engine/logic/evaluation.hpp"
#include "engine/logic/restriction.hpp"
#include "engine/logic/settled_circuit.hpp"

namespace leat::works {

using logic::Diagram;
using model::ExpressionId;
using model::SignalId;

Conditions::Conditions(model::Circuit const& circuit, std::vector<ExpressionId> const& roots,
                       std::vector<SignalId> const& order, std::size_t most_nodes)
    : cone_(logic::Cones(circuit).of(roots)), diagram_(most_nodes) {
  for (std::size_t i = 0; i < roots.size(); ++i) own_root_.emplace(roots[i], cone_.roots[i]);
  for (SignalId own = 0; own < cone_.signals.size(); ++own)
    own_signal_.emplace(cone_.signals[own], own);
  auto const settled = logic::settled_circuit(cone_.circuit);
  number(settled, order);
  follow(settled);
  reach();
}

void Conditions::number(model::Circuit const& settled, std::vector<SignalId> const& order) {
  constexpr auto unplaced = Diagram::below_all;
  std::vector<Diagram::Level> level_of(cone_.signals.size(), unplaced);
  auto const take = [&](SignalId own) {
    auto const& signal = settled.signals[own];
    if (level_of[own] != unplaced || !(signal.is_input() || signal.is_memory())) return;
    level_of[own] = static_cast<Diagram::Level>(variables_.size());
    variables_.push_back(cone_.signals[own]);
  };
  for (auto signal : order) {
    if (auto const own = own_signal_.find(signal); own != own_signal_.end()) take(own->second);
  }
  for (SignalId own = 0; own < level_of.size(); ++own) take(own);
  of_own_signal_.assign(level_of.size(), Diagram::never);
  for (SignalId own = 0; own < level_of.size(); ++own) {
    if (level_of[own] != unplaced) of_own_signal_[own] = diagram_.variable(level_of[own]);
  }
}

void Conditions::follow(model::Circuit const& settled) {
  logic::Evaluation evaluation(settled, diagram_, of_own_signal_);
  of_own_expression_.assign(settled.expressions.size(), Diagram::never);
  for (auto root : cone_.roots) of_own_expression_[root] = evaluation.of(root);
  for (auto never : settled.nevers) of_own_expression_[never] = evaluation.of(never);
  of_own_signal_ = evaluation.of_signals();
}

Function Conditions::of(ExpressionId root) const {
  auto const own = own_root_.find(root);
  require(own != own_root_.end(), "Conditions::of: an expression that was not announced");
  return of_own_expression_[own->second];
}

Function Conditions::of_signal(SignalId signal) const {
  auto const own = own_signal_.find(signal);
  require(own != own_signal_.end(), "Conditions::of_signal: nothing asked for follows from it");
  return of_own_signal_[own->second];
}

Function Conditions::of(logic::RowSet const& rows, std::vector<Function> const& inputs) {
  if (rows.is_empty()) return Diagram::never;
  if (rows.is_full()) return Diagram::always;
  auto const& first = inputs[inputs.size() - static_cast<std::size_t>(rows.inputs())];
  auto const off = of(rows.half(false), inputs), on = of(rows.half(true), inputs);
  return diagram_.choice(first, on, off);
}

// With memory a flip leads to other values of it, so that the states themselves say from where it
// is done; without, to the combination that differs in this input alone.
Function Conditions::flippable_at(Diagram::Level level) {
  if (has_memory()) return done_from_[level].value_or(reachable_);
  auto const kept_there = diagram_.both(reachable_, kept());
  auto const flipped =
      diagram_.choice(diagram_.variable(level), logic::cofactor(diagram_, kept_there, level, false),
                      logic::cofactor(diagram_, kept_there, level, true));
  return diagram_.both(reachable_, flipped);
}

Function Conditions::flippable(SignalId signal) {
  require(is_reachable_known_, "Conditions::flippable: the states are known");
  auto const f = of_signal(signal);
  auto all = Diagram::never;
  for (auto level : logic::support(diagram_, {f})) {
    auto const off = logic::cofactor(diagram_, f, level, false),
               on = logic::cofactor(diagram_, f, level, true);
    all = diagram_.either(all, diagram_.both(flippable_at(level), diagram_.differ(off, on)));
  }
  return diagram_.both(all, reachable_);
}

bool Conditions::changes_memory(SignalId input) const {
  require(is_reachable_known_, "Conditions::changes_memory: the states are known");
  return changing_memory_.count(input) != 0;
}

namespace {

// A set of states, told over other variables. What is no variable there is left out: the states
// with either value are.
class Translation {
 public:
  Translation(Diagram const& from, Diagram& to, std::vector<std::optional<Function>> const& meaning)
      : from_(from), to_(to), meaning_(meaning) {}

  Function of(Function states) {
    if (from_.level(states) == Diagram::below_all)
      return states == Diagram::always ? Diagram::always : Diagram::never;
    if (auto const known = known_.find(states.edge); known != known_.end()) return known->second;
    auto const level = from_.level(states);
    auto const [off, on] = from_.branches(states, level);
    auto const if_off = of(off), if_on = of(on);
    auto const& variable = meaning_[level / 2];
    auto const result = variable ? to_.choice(*variable, if_on, if_off) : to_.either(if_off, if_on);
    known_.emplace(states.edge, result);
    return result;
  }

 private:
  Diagram const& from_;
  Diagram& to_;
  std::vector<std::optional<Function>> const& meaning_;  // by place in the order of `from`
  std::unordered_map<std::uint32_t, Function> known_;
};

}  // namespace

// Every combination of inputs, and every state that events lead to; of what is promised never to
// come about nothing is, and what stands as built in any case. Where the states are not known, what
// is left is a bound: what is promised away may be all that leads to something.
void Conditions::reach() {
  find_states();
  auto const& nevers = cone_.circuit.nevers;
  if (nevers.empty() || (has_memory() && is_reachable_known_)) return;
  if (has_memory()) {
    is_reachable_known_ = false;
    reachable_ = diagram_.either(diagram_.both(reachable_, kept()), inputs_as_built());
  } else {
    reachable_ = reached_by_flips(kept());
  }
}

// Whatever no promise speaks of.
Function Conditions::kept() {
  auto kept = Diagram::always;
  for (auto never : cone_.circuit.nevers) kept = diagram_.both(kept, !of_own_expression_[never]);
  return kept;
}

bool Conditions::has_memory() const {
  auto const& signals = cone_.circuit.signals;
  return std::any_of(signals.begin(), signals.end(), [](auto const& s) { return s.is_memory(); });
}

// The combinations in which all inputs stand as built.
Function Conditions::inputs_as_built() {
  auto built = Diagram::always;
  for (SignalId own = 0; own < cone_.signals.size(); ++own) {
    auto const& signal = cone_.circuit.signals[own];
    if (!signal.is_input()) continue;
    built = diagram_.both(built, signal.starts_on ? of_own_signal_[own] : !of_own_signal_[own]);
  }
  return built;
}

// From as built, one input after the other, through combinations that are kept; until none is new.
Function Conditions::reached_by_flips(Function kept) {
  auto const built = inputs_as_built();
  auto reached = built;
  for (bool is_new = true; is_new && !diagram_.has_run_out();) {
    auto const before = reached;
    for (Diagram::Level level = 0; level < variables_.size(); ++level) {
      auto const flipped = logic::exists(diagram_, reached, {level});
      reached = diagram_.either(reached, diagram_.both(flipped, kept));
    }
    is_new = reached != before;
  }
  return reached;
}

void Conditions::find_states() {
  if (!has_memory()) return;
  explore::SymbolicStates const states(cone_.circuit);
  is_reachable_known_ = states.knowledge() == explore::SymbolicStates::Knowledge::complete;
  has_too_many_states_ = !is_reachable_known_;
  has_restless_ = states.is_unquiet_as_built();
  if (states.is_unquiet_as_built()) is_reachable_known_ = false;
  if (!is_reachable_known_) return;
  for (std::size_t event = 0; event < states.input_count(); ++event)
    has_restless_ = has_restless_ || states.unquiet_count(event) > 0;
  std::vector<std::optional<Function>> meaning(states.variables().size());
  for (std::size_t v = 0; v < meaning.size(); ++v) {
    auto const plant = cone_.signals[states.variables()[v]];
    if (std::find(variables_.begin(), variables_.end(), plant) == variables_.end()) continue;
    meaning[states.places()[v]] = of_own_signal_[states.variables()[v]];
    if (v < states.input_count()) continue;
    for (std::size_t event = 0; event < states.input_count(); ++event) {
      if (states.can_change(event, v))
        changing_memory_.insert(cone_.signals[states.variables()[event]]);
    }
  }
  Translation translation(states.diagram(), diagram_, meaning);
  reachable_ = translation.of(states.states());
  done_from_.resize(variables_.size());
  for (std::size_t event = 0; event < states.input_count(); ++event) {
    auto const from = states.done_from(event);
    auto const input = meaning[states.places()[event]];
    if (from != states.states() && input) done_from_[diagram_.level(*input)] = translation.of(from);
  }
}

}  // namespace leat::works
