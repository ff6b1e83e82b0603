#include "engine/logic/machine.hpp"

#include <algorithm>
#include <array>
#include <map>

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

Machine::Settled Machine::as_built() const {
  Code code = 0;
  for (std::size_t v = 0; v < variables_.size(); ++v) {
    if (circuit_->signals[variables_[v]].starts_on) code |= Code{1} << v;
  }
  return settle(code, triggers(code), true);
}

Machine::Settled Machine::after(Code code, std::size_t event) const {
  return settle(code ^ (Code{1} << event), triggers(code));
}

std::vector<bool> Machine::triggers(Code code) const {
  Bench bench(*this);
  bench.load({code});
  bench.run();
  bench.note_triggers();
  std::vector<bool> result;
  for (auto lanes : bench.was_triggered) result.push_back((lanes & 1u) != 0);
  return result;
}

// One machine, with every round remembered: memory and triggers that come again prove an
// oscillation, whatever its length, and no cap is ever taken for one. The rounds differ from each
// other, so they are at most 4 to the power of the memory elements; in practice a few.
Machine::Settled Machine::settle(Code code, std::vector<bool> was_triggered,
                                 bool holds_toggles) const {
  Bench bench(*this);
  bench.holds_toggles = holds_toggles;
  bench.load({code});
  for (std::size_t m = 0; m < was_triggered.size(); ++m)
    bench.was_triggered[m] = was_triggered[m] ? 1 : 0;
  std::map<std::pair<Code, std::vector<Lanes>>, int> seen;
  std::vector<Code> rounds, now(1);
  for (int round = 0;; ++round) {
    bool const is_quiet = (bench.round() & 1u) == 0;
    bench.store(now);
    if (is_quiet) return {now[0], true, {}};
    auto triggers = bench.was_triggered;
    for (auto& lanes : triggers) lanes &= 1u;
    auto const [earlier, is_new] = seen.try_emplace({now[0], std::move(triggers)}, round);
    if (!is_new) {
      Code changing = 0;
      for (auto at = static_cast<std::size_t>(earlier->second); at < rounds.size(); ++at)
        changing |= rounds[at] ^ now[0];
      Oscillation oscillation{{}, round - earlier->second};
      for (std::size_t v = input_count_; v < variables_.size(); ++v) {
        if ((changing >> v & 1u) != 0) oscillation.loop.push_back(variables_[v]);
      }
      return {now[0], false, std::move(oscillation)};
    }
    rounds.push_back(now[0]);
  }
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
