#pragma once
#include <optional>
#include <vector>

#include "engine/explore/switching.hpp"

namespace leat::explore {

// When which cells change after an event: without delays all at once, else as the timed logic
// (model section 4) brings it, tick by tick, until every delay has run out.
class Schedule {
 public:
  Schedule(Explored const&, long most_ticks);

  // The phases after an event in a state; empty where no cell changes. None where the ticks are
  // used up, all calls taken together. Cost: one tick of the logic for each tick that delays take.
  std::optional<std::vector<Phase>> phases(std::uint32_t state, std::size_t event);

 private:
  std::optional<std::vector<Phase>> timed_phases(std::uint32_t state, std::size_t event);

  Explored const& explored_;
  std::vector<bool> is_drawn_;
  int longest_delay_ = 0;  // ticks; 0: there is none
  long ticks_left_;
};

}  // namespace leat::explore
