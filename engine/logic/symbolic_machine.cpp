#include "engine/logic/symbolic_machine.hpp"

#include <algorithm>
#include <limits>

namespace leat::logic {

using model::Operator;
using model::SignalKind;
using Function = Diagram::Function;

// Gives each variable its place: a memory element, then depth first what it looks at.
class SymbolicMachine::Order {
 public:
  explicit Order(SymbolicMachine const& machine)
      : machine_(machine),
        writer_(machine.program_.register_count(), none),
        variable_(machine.program_.register_count(), none),
        places_(machine.variables_.size(), none) {
    auto const& steps = machine.program_.instructions();
    for (std::uint32_t i = 0; i < steps.size(); ++i) writer_[steps[i].to] = i;
    for (std::uint32_t v = 0; v < machine.variables_.size(); ++v)
      variable_[machine.variables_[v]] = v;
  }

  std::vector<Diagram::Level> run() {
    std::vector<char> is_looked_at(places_.size(), 0);
    for (auto v = machine_.input_count_; v < places_.size(); ++v) {
      for (auto other : looked_at(v)) is_looked_at[other] = other != v || is_looked_at[other] != 0;
    }
    for (std::uint32_t v = 0; v < places_.size(); ++v)
      if (is_looked_at[v] == 0 && v >= machine_.input_count_) place_from(v);
    for (auto v = static_cast<std::uint32_t>(machine_.input_count_); v < places_.size(); ++v)
      place_from(v);
    for (std::uint32_t v = 0; v < machine_.input_count_; ++v) place_from(v);
    return std::move(places_);
  }

 private:
  static constexpr auto none = std::numeric_limits<std::uint32_t>::max();

  void place_from(std::uint32_t root) {
    std::vector<std::uint32_t> open{root};
    while (!open.empty()) {
      auto const v = open.back();
      open.pop_back();
      if (places_[v] != none) continue;
      places_[v] = next_place_++;
      auto const deeper = looked_at(v);
      open.insert(open.end(), deeper.rbegin(), deeper.rend());
    }
  }

  // The variables that a memory element looks at, in the order of its text; none for inputs.
  std::vector<std::uint32_t> looked_at(std::size_t variable) const {
    if (variable < machine_.input_count_) return {};
    auto const& memory = machine_.program_.memories()[variable - machine_.input_count_];
    std::vector<std::uint32_t> open, found;
    std::vector<char> is_seen(writer_.size(), 0);
    if (memory.kind == SignalKind::latch) open.push_back(memory.reset);
    open.push_back(memory.definition);
    while (!open.empty()) {
      auto const reg = open.back();
      open.pop_back();
      if (is_seen[reg]++ != 0) continue;
      if (variable_[reg] != none) found.push_back(variable_[reg]);
      if (writer_[reg] == none) continue;
      auto const& step = machine_.program_.instructions()[writer_[reg]];
      if (step.has_right()) open.push_back(step.right);
      if (step.has_left()) open.push_back(step.left);
    }
    return found;
  }

  SymbolicMachine const& machine_;
  std::vector<std::uint32_t> writer_, variable_;  // by register
  std::vector<Diagram::Level> places_;
  Diagram::Level next_place_ = 0;
};

// The rounds after an event, every value a function of the state before it.
//
// Whether all is quiet is asked for all settled states together: `restless` are those in which the
// last round still changed something. A state whose memory and triggers are again what they were at
// the last mark oscillates, since a round depends on nothing else. Marks are set after 1, 2, 4, ...
// rounds (R. P. Brent, 1980), so every period comes between two marks at last.
class SymbolicMachine::Rounds {
 public:
  Rounds(SymbolicMachine& machine, std::vector<Function> const& variables)
      : machine_(machine),
        diagram_(*machine.diagram_),
        memories_(machine.program_.memories()),
        registers_(machine.program_.register_count(), Diagram::never),
        is_new_(registers_.size(), 1),
        was_triggered_(memories_.size()) {
    for (std::size_t v = 0; v < variables.size(); ++v)
      registers_[machine.variables_[v]] = variables[v];
    run();
    for (std::size_t m = 0; m < memories_.size(); ++m)
      was_triggered_[m] = registers_[memories_[m].definition];
  }

  // While the start settles: nothing has gone on yet.
  void hold_toggles() { holds_toggles_ = true; }

  // The states in which a round would change no memory, were nothing to happen.
  Function settled() {
    auto result = Diagram::always;
    for (std::size_t m = 0; m < memories_.size(); ++m)
      result = diagram_.both(result, !diagram_.differ(next(m), registers_[memories_[m].signal]));
    return result;
  }

  void flip(model::SignalId input) { set(input, !registers_[input]); }

  Outcome settle(Function among, std::size_t most_rounds) {
    auto restless = among;
    Outcome outcome;
    mark();
    for (std::size_t round = 1; restless != Diagram::never; ++round) {
      if (round > most_rounds || diagram_.has_run_out()) {
        outcome.unknown = restless;
        break;
      }
      restless = diagram_.both(restless, change_memory());
      auto const again = diagram_.both(restless, as_marked(restless));
      outcome.oscillating = diagram_.either(outcome.oscillating, again);
      restless = diagram_.both(restless, !again);
      if ((round & (round - 1)) == 0) mark();
    }
    for (auto variable : machine_.variables_) outcome.after.push_back(registers_[variable]);
    return outcome;
  }

 private:
  void set(std::uint32_t reg, Function value) {
    if (registers_[reg] == value) return;
    registers_[reg] = value;
    is_new_[reg] = 1;
  }

  // Only what reads something new is computed again.
  void run() {
    for (auto const& step : machine_.program_.instructions()) {
      bool const is_stale = (!step.has_left() && is_first_) ||
                            (step.has_left() && is_new_[step.left] != 0) ||
                            (step.has_right() && is_new_[step.right] != 0);
      if (is_stale) set(step.to, computed(step));
    }
    is_first_ = false;
    std::fill(is_new_.begin(), is_new_.end(), 0);
  }

  Function computed(Program::Instruction const& step) {
    auto const left = step.has_left() ? registers_[step.left] : Diagram::never;
    auto const right = step.has_right() ? registers_[step.right] : Diagram::never;
    switch (step.op) {
      case Operator::signal:
        return left;
      case Operator::negation:
        return !left;
      case Operator::conjunction:
        return diagram_.both(left, right);
      case Operator::disjunction:
        return diagram_.either(left, right);
      case Operator::parity:
        return diagram_.differ(left, right);
      case Operator::constant:
        break;
    }
    return step.left != 0 ? Diagram::always : Diagram::never;
  }

  Function next(std::size_t m) {
    auto const& memory = memories_[m];
    auto const held = registers_[memory.signal], trigger = registers_[memory.definition];
    switch (memory.kind) {
      case SignalKind::toggle:
        if (holds_toggles_) return held;
        return diagram_.differ(held, diagram_.both(trigger, !was_triggered_[m]));
      case SignalKind::latch:
        return diagram_.either(trigger, diagram_.both(held, !registers_[memory.reset]));
      default:
        return trigger;
    }
  }

  // One round; the states in which some memory changed.
  Function change_memory() {
    run();
    std::vector<Function> after(memories_.size());
    for (std::size_t m = 0; m < memories_.size(); ++m) after[m] = next(m);
    auto changed = Diagram::never;
    for (std::size_t m = 0; m < memories_.size(); ++m) {
      was_triggered_[m] = registers_[memories_[m].definition];
      auto const held = registers_[memories_[m].signal];
      if (after[m] != held) changed = diagram_.either(changed, diagram_.differ(after[m], held));
      set(memories_[m].signal, after[m]);
    }
    return changed;
  }

  void mark() {
    marked_.clear();
    for (auto const& memory : memories_) marked_.push_back(registers_[memory.signal]);
    marked_triggers_ = was_triggered_;
  }

  // Of the given states those in which memory and triggers are as they were at the mark.
  Function as_marked(Function among) {
    auto same = among;
    for (std::size_t m = 0; m < memories_.size() && same != Diagram::never; ++m) {
      auto const held = registers_[memories_[m].signal];
      if (held != marked_[m]) same = diagram_.both(same, !diagram_.differ(held, marked_[m]));
      if (memories_[m].kind == SignalKind::toggle && was_triggered_[m] != marked_triggers_[m])
        same = diagram_.both(same, !diagram_.differ(was_triggered_[m], marked_triggers_[m]));
    }
    return same;
  }

  SymbolicMachine& machine_;
  Diagram& diagram_;
  std::vector<Program::Memory> const& memories_;
  std::vector<Function> registers_;
  std::vector<char> is_new_;  // by register, since the program last ran
  bool is_first_ = true;
  bool holds_toggles_ = false;
  std::vector<Function> was_triggered_;  // by memory
  std::vector<Function> marked_, marked_triggers_;
};

SymbolicMachine::SymbolicMachine(model::Circuit const& circuit, Diagram& diagram)
    : circuit_(&circuit), diagram_(&diagram), program_(circuit) {
  for (model::SignalId s = 0; s < circuit.signals.size(); ++s) {
    if (circuit.signals[s].is_input()) variables_.push_back(s);
  }
  input_count_ = variables_.size();
  for (auto const& memory : program_.memories()) variables_.push_back(memory.signal);
  places_ = Order(*this).run();
}

SymbolicMachine::Outcome SymbolicMachine::after(std::size_t event, std::size_t most_rounds) {
  std::vector<Function> values;
  for (std::size_t v = 0; v < variables_.size(); ++v) values.push_back(held(v));
  Rounds rounds(*this, values);
  auto const settled = rounds.settled();
  rounds.flip(variables_[event]);
  return rounds.settle(settled, most_rounds);
}

SymbolicMachine::Outcome SymbolicMachine::as_built(std::size_t most_rounds) {
  std::vector<Function> values;
  for (auto variable : variables_)
    values.push_back(circuit_->signals[variable].starts_on ? Diagram::always : Diagram::never);
  Rounds rounds(*this, values);
  rounds.hold_toggles();
  return rounds.settle(Diagram::always, most_rounds);
}

}  // namespace leat::logic
