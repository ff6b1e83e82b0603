#pragma once
#include <vector>

#include "engine/model/circuit.hpp"

namespace leat::logic {

// What a player does to an input in one tick of a timed run. A button is pressed, whatever is said.
enum class Handling : std::uint8_t { flip, turn_on, turn_off };

struct Deed {
  int tick = 1;  // 1 or later: what is done shows in this tick
  model::SignalId input = 0;
  Handling handling = Handling::flip;
};

// A timed run as a value: each signal's value in tick 0, and the ticks in which it changed.
struct Recording {
  std::vector<bool> starts_on;            // by SignalId
  std::vector<std::vector<int>> changes;  // by SignalId; ascending
  std::vector<int> unquiet;  // ticks within which the logic did not get quiet, ascending
  int last_tick = 0;         // the run is known up to and with this tick
  int active_until = 0;      // the last tick with a deed, a change, or no quiet
  bool is_over = false;      // nothing would change after the last tick: the run goes on like that

  bool is_on(model::SignalId, int tick) const;
};

// How long a run is recorded: up to `most`, or, from `least` on, until nothing is under way.
struct RunLength {
  int least = 0, most = 0;
};

// The longest run that is recorded.
inline constexpr int most_ticks = 1'000'000;

// Runs a circuit tick by tick (Timed) under deeds, ascending by tick.
//
// A run is over once nothing has changed for as many ticks as its longest delay, pulse or half
// period: every delay then holds only what goes into it, and no pulse is left. A run that is over
// is cut back to one tick after its last activity, but not below `least`. Cost: a pass of the
// circuit's operators for each tick, at most the longest time past the end.
// Contract: deeds are for levers, plates and buttons; 0 <= least <= most <= most_ticks.
Recording record(model::Circuit const&, std::vector<Deed> const&, RunLength);

// All the times of a circuit added up, a clock's period whole: four times that, but at least 200
// ticks, is how long a run is worth waiting for quiet. At most most_ticks.
int patience(model::Circuit const&);

}  // namespace leat::logic
