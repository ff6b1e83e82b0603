#pragma once
#include <cstdint>
#include <deque>
#include <vector>

#include "engine/logic/program.hpp"

namespace leat::logic {

// The timed semantics of a circuit (model section 4), tick by tick: a button stays on for its
// pulse, a clock changes every half period, a delay shows what its input was so many ticks ago.
// Within a tick wires, latches and toggles settle without taking time, in the rounds of Machine;
// what does not get quiet within a tick stays as it is when the rounds are used up, and the tick
// says so. The circuit must outlive it.
class Timed {
 public:
  explicit Timed(model::Circuit const&);

  int now() const { return now_; }  // ticks since as built; the state as built is that of tick 0
  bool is_on(model::SignalId signal) const { return (registers_[signal] & 1u) != 0; }
  std::vector<bool> values() const;  // every signal's

  // What comes from outside, to take effect in the next tick. Contract: a lever or plate; a button.
  void put(model::SignalId lever_or_plate, bool is_on);
  void press(model::SignalId button);

  // One tick on; whether everything got quiet within it.
  bool tick();

 private:
  struct Pulse {
    model::SignalId button = 0;
    int ticks_left = 0;
  };
  struct Line {
    std::size_t memory = 0;       // index into the program's memories
    std::deque<bool> on_the_way;  // oldest first, as many as the delay has ticks
  };

  bool feeds(Line const&) const;  // what goes into the delay now
  bool settle(bool holds_toggles = false);
  bool settle_round(bool holds_toggles);
  void set(model::SignalId signal, bool is_on) { registers_[signal] = is_on ? 1 : 0; }

  model::Circuit const* circuit_;
  Program program_;
  std::vector<Lanes> registers_;
  std::vector<bool> was_triggered_;
  std::vector<Pulse> pulses_;
  std::vector<Line> lines_;
  int now_ = 0;
};

}  // namespace leat::logic
