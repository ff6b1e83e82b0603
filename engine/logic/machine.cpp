#include "engine/logic/machine.hpp"

#include <algorithm>
#include <array>

#include "engine/contract.hpp"
#include "engine/logic/transpose.hpp"

namespace leat::logic {

using model::SignalId;
using model::SignalKind;

// The registers of 64 machines, and what their triggers were one round ago.
struct Machine::Bench {
  explicit Bench(Machine const& of)
      : machine(of),
        registers(of.program_.register_count()),
        was_triggered(of.program_.memories().size()),
        after(of.program_.memories().size()) {}

  Machine const& machine;
  std::vector<Lanes> registers, was_triggered, after;
  bool holds_toggles = false;

  void run() { machine.program_.run(registers); }

  void note_triggers() {
    auto const& memories = machine.program_.memories();
    for (std::size_t m = 0; m < memories.size(); ++m)
      was_triggered[m] = registers[memories[m].definition];
  }

  Lanes next(std::size_t m) const {
    auto const& memory = machine.program_.memories()[m];
    auto const held = registers[memory.signal], trigger = registers[memory.definition];
    switch (memory.kind) {
      case SignalKind::toggle:
        return holds_toggles ? held : held ^ (trigger & ~was_triggered[m]);
      case SignalKind::latch:
        return trigger | (held & ~registers[memory.reset]);
      default:
        return trigger;
    }
  }

  // One round; the lanes in which some memory changed.
  Lanes round() {
    run();
    auto const& memories = machine.program_.memories();
    for (std::size_t m = 0; m < memories.size(); ++m) after[m] = next(m);
    note_triggers();
    Lanes changed = 0;
    for (std::size_t m = 0; m < memories.size(); ++m) {
      changed |= after[m] ^ registers[memories[m].signal];
      registers[memories[m].signal] = after[m];
    }
    return changed;
  }

  void load(std::vector<Code> const& codes) {
    std::array<std::uint64_t, lane_count> rows{};
    std::copy(codes.begin(), codes.end(), rows.begin());
    transpose(rows);
    for (std::size_t v = 0; v < machine.variables_.size(); ++v)
      registers[machine.variables_[v]] = rows[v];
  }

  // Of the lowest lane, what its memory holds and its triggers were.
  std::pair<Code, std::vector<Lanes>> lowest() const {
    Code code = 0;
    for (std::size_t v = 0; v < machine.variables_.size(); ++v)
      code |= (registers[machine.variables_[v]] & 1u) << v;
    auto triggers = was_triggered;
    for (auto& lanes : triggers) lanes &= 1u;
    return {code, std::move(triggers)};
  }

  void store(std::vector<Code>& codes) const {
    std::array<std::uint64_t, lane_count> rows{};
    for (std::size_t v = 0; v < machine.variables_.size(); ++v)
      rows[v] = registers[machine.variables_[v]];
    transpose(rows);
    std::copy_n(rows.begin(), codes.size(), codes.begin());
  }
};

Machine::Machine(model::Circuit const& circuit) : circuit_(&circuit), program_(circuit) {
  for (SignalId s = 0; s < circuit.signals.size(); ++s) {
    if (circuit.signals[s].is_input()) variables_.push_back(s);
  }
  input_count_ = variables_.size();
  for (auto const& memory : program_.memories()) variables_.push_back(memory.signal);
  require(variables_.size() <= most_variables, "Machine: more variables than a code can hold");
}

std::vector<bool> Machine::values(Code code) const {
  Bench bench(*this);
  bench.load({code});
  bench.run();
  std::vector<bool> values(circuit_->signals.size());
  for (std::size_t s = 0; s < values.size(); ++s) values[s] = (bench.registers[s] & 1u) != 0;
  return values;
}

std::size_t Machine::most_rounds() const {
  constexpr std::size_t most = std::size_t{1} << 20, fewest = 4096,
                        most_steps = std::size_t{1} << 30;
  auto const steps = program_.instructions().size() + program_.memories().size() + 1;
  return std::clamp(most_steps / steps, fewest, most);
}

Machine::Settled Machine::as_built(std::size_t within_rounds) const {
  Code code = 0;
  for (std::size_t v = 0; v < variables_.size(); ++v) {
    if (circuit_->signals[variables_[v]].starts_on) code |= Code{1} << v;
  }
  Bench bench(*this);
  bench.holds_toggles = true;
  bench.load({code});
  bench.run();
  bench.note_triggers();
  return settle(bench, within_rounds);
}

Machine::Settled Machine::after(Code code, std::size_t event, std::size_t within_rounds) const {
  Bench bench(*this);
  bench.load({code});
  bench.run();
  bench.note_triggers();
  bench.load({code ^ (Code{1} << event)});
  return settle(bench, within_rounds);
}

// One machine, in the lowest lane. A round depends on memory and triggers alone, so where these are
// again what they were at a mark it oscillates, and the rounds between are the period. Marks are
// set after 1, 2, 4, ... rounds (R. P. Brent, "An improved Monte Carlo factorization algorithm",
// 1980), so every period comes between two marks at last, within three times the rounds until it
// first repeats; nothing else is remembered. Rounds can be as many as memory and triggers have
// values, 4 to the power of the memory elements; in practice they are a few. Past the bound on them
// nothing is claimed.
Machine::Settled Machine::settle(Bench& bench, std::size_t within_rounds) const {
  auto const most = std::min(within_rounds, most_rounds());
  auto marked = bench.lowest();
  Code changing = 0;
  std::size_t mark = 0;
  for (std::size_t round = 1; round <= most; ++round) {
    bool const is_quiet = (bench.round() & 1u) == 0;
    auto now = bench.lowest();
    if (is_quiet) return {now.first, true, true, {}, round};
    changing |= now.first ^ marked.first;
    if (now == marked)
      return {now.first, false, true, {memory_in(changing), static_cast<int>(round - mark)}, round};
    if ((round & (round - 1)) != 0) continue;
    marked = std::move(now);
    changing = 0;
    mark = round;
  }
  return {marked.first, false, false, {}, most};
}

std::vector<SignalId> Machine::memory_in(Code changing) const {
  std::vector<SignalId> memory;
  for (std::size_t v = input_count_; v < variables_.size(); ++v) {
    if ((changing >> v & 1u) != 0) memory.push_back(variables_[v]);
  }
  return memory;
}

// Ripples run through the memory elements once or twice; lanes that are not quiet by then are left
// to `settle`.
Lanes Machine::after(std::vector<Code> const& from, std::size_t event,
                     std::vector<Code>& to) const {
  require(from.size() <= lane_count, "Machine::after: more states than lanes");
  Bench bench(*this);
  bench.load(from);
  bench.run();
  bench.note_triggers();
  bench.registers[variables_[event]] = ~bench.registers[variables_[event]];
  auto const used = from.size() == lane_count ? ~Lanes{0} : (Lanes{1} << from.size()) - 1;
  auto const most_rounds = 2 * program_.memories().size() + 2;
  Lanes changing = used;
  for (std::size_t round = 0; round < most_rounds && changing != 0; ++round)
    changing = bench.round() & used;
  to.resize(from.size());
  bench.store(to);
  return changing;
}

}  // namespace leat::logic
