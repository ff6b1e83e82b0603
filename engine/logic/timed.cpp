#include "engine/logic/timed.hpp"

#include "engine/contract.hpp"

namespace leat::logic {

using model::SignalId;
using model::SignalKind;

Timed::Timed(model::Circuit const& circuit)
    : circuit_(&circuit), program_(circuit), registers_(program_.register_count()) {
  for (SignalId s = 0; s < circuit.signals.size(); ++s) set(s, circuit.signals[s].starts_on);
  program_.run(registers_);
  auto const& memories = program_.memories();
  for (std::size_t m = 0; m < memories.size(); ++m) {
    was_triggered_.push_back((registers_[memories[m].definition] & 1u) != 0);
    if (memories[m].kind != SignalKind::delay) continue;
    auto const& delay = circuit.signals[memories[m].signal];
    require(delay.ticks >= 1, "Timed: a delay takes at least one tick");
    lines_.push_back({m, std::deque<bool>(static_cast<std::size_t>(delay.ticks), delay.starts_on)});
  }
  settle(true);
  for (auto& line : lines_) line.on_the_way.back() = feeds(line);
}

std::vector<bool> Timed::values() const {
  std::vector<bool> values(circuit_->signals.size());
  for (SignalId s = 0; s < values.size(); ++s) values[s] = is_on(s);
  return values;
}

bool Timed::feeds(Line const& line) const {
  return (registers_[program_.memories()[line.memory].definition] & 1u) != 0;
}

void Timed::put(SignalId input, bool is_on) {
  auto const kind = circuit_->signals[input].kind;
  require(kind == SignalKind::lever || kind == SignalKind::plate,
          "Timed::put: neither lever nor plate");
  set(input, is_on);
}

void Timed::press(SignalId button) {
  auto const& signal = circuit_->signals[button];
  require(signal.kind == SignalKind::button, "Timed::press: not a button");
  set(button, true);
  std::erase_if(pulses_, [&](Pulse const& pulse) { return pulse.button == button; });
  pulses_.push_back({button, signal.ticks});
}

bool Timed::tick() {
  ++now_;
  for (auto& pulse : pulses_) {
    // The pulse is on in the tick of the press and in as many as it lasts, that one included.
    if (pulse.ticks_left-- == 0) set(pulse.button, false);
  }
  std::erase_if(pulses_, [](Pulse const& pulse) { return pulse.ticks_left < 0; });
  for (SignalId s = 0; s < circuit_->signals.size(); ++s) {
    auto const& signal = circuit_->signals[s];
    if (signal.kind == SignalKind::clock && now_ % signal.ticks == 0) set(s, !is_on(s));
  }
  for (auto& line : lines_) {
    auto const& memory = program_.memories()[line.memory];
    set(memory.signal, line.on_the_way.front());
    line.on_the_way.pop_front();
  }
  bool const is_quiet = settle();
  for (auto& line : lines_) line.on_the_way.push_back(feeds(line));
  return is_quiet;
}

bool Timed::settle(bool holds_toggles) {
  auto const most_rounds = 4 * program_.memories().size() + 4;
  for (std::size_t round = 0; round < most_rounds; ++round) {
    if (!settle_round(holds_toggles)) return true;
  }
  return false;
}

// Whether some latch or toggle changed.
bool Timed::settle_round(bool holds_toggles) {
  program_.run(registers_);
  auto const& memories = program_.memories();
  std::vector<std::pair<SignalId, bool>> changes;
  for (std::size_t m = 0; m < memories.size(); ++m) {
    auto const& memory = memories[m];
    bool const trigger = (registers_[memory.definition] & 1u) != 0;
    bool const held = is_on(memory.signal);
    bool after = held;
    if (memory.kind == SignalKind::toggle && !holds_toggles)
      after = held != (trigger && !was_triggered_[m]);
    if (memory.kind == SignalKind::latch)
      after = trigger || (held && (registers_[memory.reset] & 1u) == 0);
    was_triggered_[m] = trigger;
    if (after != held) changes.emplace_back(memory.signal, after);
  }
  for (auto [signal, is_on] : changes) set(signal, is_on);
  return !changes.empty();
}

}  // namespace leat::logic
