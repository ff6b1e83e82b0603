#pragma once
#include <span>

#include "engine/explore/state_keys.hpp"
#include "engine/logic/side_by_side.hpp"

namespace leat::explore {

// The keys of the states that follow a block of states, event by event.
//
// Idea: a key is linear in the code, so the next key is the old one with the images of the
// variables that changed. What changed in all lanes is one constant; only what differs between
// lanes is taken lane by lane, and where that is much, by transposing planes of key bits.
class Neighbours {
 public:
  using Key = StateKeys::Key;
  using Plane = logic::SideBySide::Plane;
  static constexpr auto most_states = logic::SideBySide::most_states;

  // Machine and keys must outlive it.
  Neighbours(logic::Machine const& machine, StateKeys const& keys)
      : keys_(&keys), block_(machine) {}

  logic::SideBySide const& block() const { return block_; }
  // Settled states and their keys, at most most_states.
  void load(std::span<logic::Code const> codes, std::span<Key const> keys);
  // What an event does to the block.
  struct Flip {
    Key key = 0;  // changes of key and code that are the same for all states
    logic::Code code = 0;
    bool is_even = true;     // there are no others
    Plane const* unsettled;  // lanes that did not get quiet within the common rounds: see Machine
  };
  // Where it is not even, the keys after the event are written to `to`. What is returned lives
  // until the next call.
  Flip flip(std::size_t event, std::span<Key> to);

 private:
  struct Uneven {
    Key image = 0;
    Plane const* lanes = nullptr;
  };
  void add_lane_by_lane(std::span<Key> to) const;
  void add_transposed(std::span<Key> to) const;

  StateKeys const* keys_;
  logic::SideBySide block_;
  std::span<Key const> from_;
  std::vector<Uneven> uneven_;
};

}  // namespace leat::explore
