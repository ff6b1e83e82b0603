#pragma once
#include "engine/explore/states.hpp"

namespace leat::explore {

// What `reach` finds where nothing is said never to come about.
States search(logic::Machine const&, std::size_t most_states, Successors);

}  // namespace leat::explore
