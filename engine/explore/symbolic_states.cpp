#include "engine/explore/symbolic_states.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <span>

#include "engine/contract.hpp"
#include "engine/explore/saturation.hpp"
#include "engine/explore/states.hpp"
#include "engine/logic/evaluation.hpp"

namespace leat::explore {

using logic::Diagram;
using Function = Diagram::Function;

namespace {

// An event's changes in parts: one for each variable that can change, holding where it is the
// highest one that does. A part leaves what is above alone, which is what saturation lives on.
class Parts {
 public:
  Parts(Diagram& diagram, logic::SymbolicMachine const& machine)
      : diagram_(diagram), places_(machine.places()), highest_first_(places_.size()) {
    std::iota(highest_first_.begin(), highest_first_.end(), std::size_t{0});
    std::sort(highest_first_.begin(), highest_first_.end(),
              [&](auto a, auto b) { return places_[a] < places_[b]; });
  }

  void add(std::vector<Function> const& after, Function except, std::vector<Transitions>& to) {
    auto where = !except;
    for (std::size_t i = 0; i < highest_first_.size() && where != Diagram::never; ++i) {
      auto const v = highest_first_[i];
      auto const changes = diagram_.differ(after[v], diagram_.variable(2 * places_[v]));
      auto const is_highest = diagram_.both(where, changes);
      if (is_highest != Diagram::never) to.push_back({changed_from(i, after, is_highest)});
      where = diagram_.both(where, !changes);
    }
  }

 private:
  // Lowest first, so that each step only adds on top.
  Function changed_from(std::size_t highest, std::vector<Function> const& after, Function where) {
    auto relation = Diagram::always;
    for (auto i = highest_first_.size(); i-- > highest;) {
      auto const v = highest_first_[i];
      auto const before = diagram_.variable(2 * places_[v]);
      if (after[v] == before) continue;
      auto const next = diagram_.variable(2 * places_[v] + 1);
      relation = diagram_.both(relation, !diagram_.differ(next, after[v]));
    }
    return diagram_.both(relation, where);
  }

  Diagram& diagram_;
  std::vector<Diagram::Level> const& places_;
  std::vector<std::size_t> highest_first_;  // variables by place
};

// The states one by one, where they are few: that costs what they are, however far an event
// reaches. Each as a number whose highest bit is the variable at place 0. None where they are many,
// or not all known.
std::optional<std::vector<logic::Code>> few_states(model::Circuit const& circuit,
                                                   std::vector<Diagram::Level> const& places) {
  constexpr std::size_t few = std::size_t{1} << 16;
  if (places.size() > logic::Machine::most_variables) return std::nullopt;
  auto const states = reach(logic::Machine(circuit), few, Successors::left_out);
  if (!states.is_complete) return std::nullopt;
  std::vector<logic::Code> codes;
  for (auto code : states.codes) {
    logic::Code placed = 0;
    for (std::size_t v = 0; v < places.size(); ++v)
      placed |= (code >> v & 1u) << (places.size() - 1 - places[v]);
    codes.push_back(placed);
  }
  std::sort(codes.begin(), codes.end());
  return codes;
}

// The set of these codes, ascending, which are alike above some place.
Function set_of(std::span<logic::Code const> codes, Diagram::Level place, Diagram::Level places,
                Diagram& diagram) {
  if (codes.empty()) return Diagram::never;
  if (place == places) return Diagram::always;
  auto const bit = places - 1 - place;
  auto const on = std::partition_point(codes.begin(), codes.end(),
                                       [&](logic::Code code) { return (code >> bit & 1u) == 0; });
  auto const count = static_cast<std::size_t>(on - codes.begin());
  return diagram.node(2 * place, set_of(codes.first(count), place + 1, places, diagram),
                      set_of(codes.subspan(count), place + 1, places, diagram));
}

}  // namespace

SymbolicStates::SymbolicStates(model::Circuit const& circuit, Limits limits)
    : diagram_(limits.most_nodes, limits.deepest),
      machine_(circuit, diagram_),
      unquiet_(machine_.input_count(), Diagram::never) {
  knowledge_ = explore(circuit, limits);
  if (diagram_.has_run_out()) knowledge_ = Knowledge::out_of_nodes;
}

// The states before the event from which it would lead to what never comes about.
Function SymbolicStates::promised_away(model::Circuit const& circuit,
                                       std::vector<Function> const& after) {
  if (circuit.nevers.empty()) return Diagram::never;
  std::vector<Function> of_signal(circuit.signals.size(), Diagram::never);
  for (std::size_t v = 0; v < after.size(); ++v) of_signal[variables()[v]] = after[v];
  logic::Evaluation evaluation(circuit, diagram_, std::move(of_signal));
  auto away = Diagram::never;
  for (auto never : circuit.nevers) away = diagram_.either(away, evaluation.of(never));
  return away;
}

// States after which an event does not get quiet, or is not done, are left out of the transitions:
// nothing follows them by that event.
SymbolicStates::Knowledge SymbolicStates::explore(model::Circuit const& circuit,
                                                  Limits const& limits) {
  auto const start = machine_.as_built(limits.most_rounds);
  is_unquiet_as_built_ = start.oscillating == Diagram::always;
  if (start.unknown != Diagram::never) return Knowledge::out_of_rounds;
  if (is_unquiet_as_built_) return Knowledge::complete;
  auto const built = state_of(start.after);
  if (diagram_.has_run_out()) return Knowledge::out_of_nodes;
  auto const few = few_states(circuit, machine_.places());
  std::vector<Transitions> transitions;
  Parts parts(diagram_, machine_);
  auto unknown = Diagram::never;
  std::vector<logic::SymbolicMachine::Outcome> outcomes;
  std::vector<Function> not_done;  // by event: from where nothing follows it
  for (std::size_t event = 0; event < input_count(); ++event) {
    auto const& outcome = outcomes.emplace_back(machine_.after(event, limits.most_rounds));
    unquiet_[event] = outcome.oscillating;
    unknown = diagram_.either(unknown, outcome.unknown);
    auto const is_open = diagram_.either(outcome.oscillating, outcome.unknown);
    auto const away = promised_away(circuit, outcome.after);
    not_done.push_back(diagram_.either(is_open, away));
    if (!few) parts.add(outcome.after, not_done.back(), transitions);
    if (diagram_.has_run_out()) return Knowledge::out_of_nodes;
  }
  states_ = few ? set_of(*few, 0, static_cast<Diagram::Level>(machine_.places().size()), diagram_)
                : saturated(diagram_, built, std::move(transitions));
  for (auto& states : unquiet_) states = diagram_.both(states, states_);
  look_back(outcomes, not_done);
  bool const is_all_known = diagram_.both(unknown, states_) == Diagram::never;
  return is_all_known ? Knowledge::complete : Knowledge::out_of_rounds;
}

// From where each event is done, and what it changes, once all states are known.
void SymbolicStates::look_back(std::vector<logic::SymbolicMachine::Outcome> const& outcomes,
                               std::vector<Function> const& not_done) {
  std::vector<Function> held;
  for (auto place : machine_.places()) held.push_back(diagram_.variable(2 * place));
  for (std::size_t event = 0; event < outcomes.size(); ++event) {
    auto const& after = outcomes[event].after;
    auto const from = done_from_.emplace_back(diagram_.both(states_, !not_done[event]));
    auto& changing = changing_.emplace_back(variables().size() - input_count(), false);
    for (auto v = input_count(); v < variables().size(); ++v) {
      if (after[v] == held[v]) continue;
      auto const differs = diagram_.both(from, diagram_.differ(after[v], held[v]));
      changing[v - input_count()] = differs != Diagram::never;
    }
  }
}

Function SymbolicStates::state_of(std::vector<Function> const& values) {
  auto state = Diagram::always;
  for (std::size_t v = 0; v < values.size(); ++v) {
    auto const held = diagram_.variable(2 * machine_.places()[v]);
    state = diagram_.both(state, values[v] == Diagram::always ? held : !held);
  }
  return state;
}

// The levels after an event are tested by no set: they do not change its share.
long double SymbolicStates::count_of(Function states) const {
  return std::ldexp(diagram_.share(states), static_cast<int>(variables().size()));
}

bool SymbolicStates::is_in(Function states, std::vector<bool> const& values) const {
  require(values.size() == variables().size(), "SymbolicStates: a value for every variable");
  std::vector<bool> is_on(2 * values.size());
  for (std::size_t v = 0; v < values.size(); ++v) is_on[2 * machine_.places()[v]] = values[v];
  return diagram_.is_true(states, is_on);
}

}  // namespace leat::explore
