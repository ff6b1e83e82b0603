#include "engine/explore/phases.hpp"

#include <algorithm>

#include "engine/logic/timed.hpp"

namespace leat::explore {

using model::SignalKind;

namespace {

// The circuit as it stands in a settled state. Every input stays as it is put: what a button's
// pulse or a clock does next is an event of its own.
model::Circuit standing(model::Circuit circuit, std::vector<bool> const& values) {
  for (std::size_t s = 0; s < circuit.signals.size(); ++s) {
    auto& signal = circuit.signals[s];
    signal.starts_on = values[s];
    if (signal.is_input()) signal.kind = SignalKind::lever;
  }
  return circuit;
}

}  // namespace

Schedule::Schedule(Explored const& explored, long most_ticks)
    : explored_(explored), is_drawn_(fills_drawn(explored.design)), ticks_left_(most_ticks) {
  for (auto const& signal : explored.machine.circuit().signals) {
    if (signal.kind == SignalKind::delay) longest_delay_ = std::max(longest_delay_, signal.ticks);
  }
}

std::optional<std::vector<Phase>> Schedule::phases(std::uint32_t state, std::size_t event) {
  if (longest_delay_ > 0) return timed_phases(state, event);
  auto const& histories = explored_.histories;
  auto const before = histories.setting_of_state[state];
  auto const after = histories.setting_of_state[explored_.states.after(state, event)];
  std::vector<Phase> phases;
  if (after != before) phases.push_back({0, histories.settings[after]});
  return phases;
}

// Once nothing has changed for as long as the longest delay, nothing is on its way any more.
std::optional<std::vector<Phase>> Schedule::timed_phases(std::uint32_t state, std::size_t event) {
  auto const values = explored_.machine.values(explored_.states.codes[state]);
  auto const input = explored_.machine.variables()[event];
  auto const circuit = standing(explored_.machine.circuit(), values);
  logic::Timed timed(circuit);
  timed.put(input, !values[input]);
  std::vector<Phase> phases;
  auto setting = setting_in(explored_.design, is_drawn_, values);
  auto before = values;
  for (int quiet = 0; quiet <= longest_delay_; ++quiet) {
    if (ticks_left_-- == 0) return std::nullopt;
    timed.tick();
    auto now = timed.values();
    if (now == before) continue;
    quiet = 0;
    before = std::move(now);
    auto next = setting_in(explored_.design, is_drawn_, before);
    if (next == setting) continue;
    setting = std::move(next);
    phases.push_back({timed.now() - 1, setting});
  }
  return phases;
}

}  // namespace leat::explore
