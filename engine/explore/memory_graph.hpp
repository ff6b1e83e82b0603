#pragma once
#include <cstdint>
#include <vector>

#include "engine/explore/states.hpp"
#include "engine/logic/row_set.hpp"

namespace leat::explore {

// The states of a machine seen by their memory alone: inputs that stand differently over the same
// memory are one.

// A value of all memory elements that is reached. Bit i is the machine's variable input_count + i.
struct MemoryValue {
  Code memory = 0;
  std::uint32_t nearest = 0;  // the state with it that the fewest events reach
  std::uint32_t states = 0;   // how many settled states have it
  std::uint32_t events = 0;   // how many events reach the nearest
};

// An event that changes the memory: input `event` goes on or off.
struct MemoryChange {
  // Indices into MemoryGraph::values; `to` is States::none where the event does not get quiet.
  std::uint32_t from = 0, to = 0;
  std::uint32_t event = 0;
  bool is_on = false;
  bool is_always = false;  // from every state of `from` in which the event can come
};

// Events of one kind after which the same elements never get quiet.
struct Restless {
  logic::Oscillation oscillation;  // of the first of them
  std::uint32_t state = 0;         // the state before it, the nearest to as built
  std::uint32_t event = 0;
  bool is_on = false;
  std::size_t count = 0;  // of how many states
};

struct MemoryGraph {
  std::vector<MemoryValue> values;      // as they are found, breadth first: 0 is as built
  std::vector<std::uint32_t> value_of;  // by state
  std::vector<Restless> restless;       // nearest first
};

// Cost: a look-up for each state. Contract: all states are known.
MemoryGraph memory_graph(logic::Machine const&, States const&);

// Ascending by from, event, is_on, to. Cost: a look at each transition, and a sort of those that
// change the memory. Contract: successors are known.
std::vector<MemoryChange> memory_changes(States const&, MemoryGraph const&);

// The values of memory that no state has, as rows over the memory elements.
// Contract: the machine has at most RowSet::most_inputs memory elements.
logic::RowSet never_reached(logic::Machine const&, MemoryGraph const&);

// Which signals have a say in the memory: its elements, and all that they look at, directly or
// through others. One value a signal.
std::vector<bool> behind_memory(model::Circuit const&);

}  // namespace leat::explore
