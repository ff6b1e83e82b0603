#pragma once
#include <array>
#include <span>
#include <vector>

#include "engine/logic/machine.hpp"

namespace leat::logic {

// Settled states of a machine side by side, one lane each, and what every event changes in them.
//
// Idea: all states are loaded once, and every event starts from that. Of the program only what some
// memory element looks at is run. Of that, an event can only touch what hangs on its input,
// directly or through memory: only this slice is run, round by round, and put back. Cost: one pass
// of the program for a load; for an event the rounds of its slice, words_per_plane machine words an
// operator.
class SideBySide {
 public:
  static constexpr std::size_t words_per_plane = 4;
  static constexpr std::size_t most_states = words_per_plane * lane_count;
  using Plane = std::array<Lanes, words_per_plane>;  // one bit a lane

  // The machine must outlive it.
  explicit SideBySide(Machine const&);

  // Contract: settled states, at most most_states.
  void load(std::span<Code const>);
  std::size_t size() const { return size_; }
  std::size_t event_count() const { return slices_.size(); }
  // Whether there is anything that both events can change. If not, either may come first.
  bool do_touch(std::size_t event, std::size_t other) const;
  // The lanes that hold a state.
  Plane const& used() const { return used_; }

  // A memory element that an event can change, and the lanes in which it did.
  struct Change {
    std::size_t variable = 0;  // index into Machine::variables
    Plane lanes{};
  };
  // What changes besides the input itself when it flips. Lanes in `unsettled` did not get quiet
  // within the common rounds; what stands in their changes means nothing, and Machine::after tells
  // what they do. What is returned lives until the next call.
  struct Outcome {
    std::vector<Change> changes;
    Plane unsettled{};
  };
  Outcome const& flip(std::size_t event);

 private:
  struct Slice {
    std::vector<Program::Instruction> instructions;
    std::vector<std::size_t> memories;     // indices into Program::memories
    std::vector<std::uint32_t> registers;  // all that an event can change
  };
  void select_instructions();
  Slice slice_of(std::size_t event) const;
  Plane round(Slice const&);

  Machine const* machine_;
  std::vector<Program::Instruction> instructions_;  // those that some memory element looks at
  std::vector<Slice> slices_;                       // by event
  std::vector<Plane> settled_, now_;
  std::vector<Plane> was_triggered_, next_;  // by memory
  std::size_t size_ = 0;
  Plane used_{};
  Outcome outcome_;
};

}  // namespace leat::logic
