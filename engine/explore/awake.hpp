#pragma once
#include <bit>
#include <cstdint>
#include <vector>

#include "engine/logic/side_by_side.hpp"

namespace leat::explore {

// One bit for each event, the first one lowest.
using Events = std::uint64_t;

inline std::size_t first_of(Events events) {
  return static_cast<std::size_t>(std::countr_zero(events));
}

// Which events of a newly found state can lead to something new: the others sleep.
//
// Idea: two events that touch nothing in common lead to the same state in either order. Let a state
// be found from its parent by `event`, and let another event, that touches nothing of `event`, lead
// from the parent to a state that is known by then. That state comes before the new one, so what it
// reaches by `event` is known before the new one's turn comes; and that is just where the new one
// would get by the other event. Source: sleep sets (P. Godefroid, Partial-Order Methods for the
// Verification of Concurrent Systems, LNCS 1032, 1996), here for a search breadth first.
//
// Invariant: an event asleep in a state either leads to one that is known when its turn comes, or
// does not get quiet at once, which the search looks at in every state. So leaving it out changes
// neither what is found nor in which order, nor from where. Cost: a few
// operations for each state found, in place of one look-up for each event asleep: of n latches with
// a lever each, n + 1 look-ups in two are left out; where every event touches the same element,
// none is.
class Awake {
 public:
  explicit Awake(logic::SideBySide const& block) {
    auto const count = block.event_count();
    for (std::size_t event = 0; event < count; ++event) {
      Events bound = 0;
      for (std::size_t other = 0; other < count; ++other)
        if (block.do_touch(event, other)) bound |= Events{1} << other;
      bound_.push_back(bound);
    }
  }

  // All of them, as in the first state.
  Events all() const { return bound_.size() == 64 ? ~Events{0} : (Events{1} << bound_.size()) - 1; }
  // In a state found by `event`; `fresh` has the events that lead from the parent to a state that
  // was not known before the parent's turn.
  Events after(std::size_t event, Events fresh) const {
    auto const later = ~Events{1} << event;
    return bound_[event] | (fresh & later);
  }

 private:
  std::vector<Events> bound_;  // by event: those that touch something it touches
};

}  // namespace leat::explore
