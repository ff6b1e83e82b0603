#pragma once
#include <cstdint>
#include <vector>

#include "engine/explore/states.hpp"
#include "engine/logic/row_set.hpp"

namespace leat::explore {

// The states of a machine seen by their memory alone: inputs that stand differently over the same
// memory are one.

// The memory elements of a machine, in the order of its variables.
std::vector<model::SignalId> memory_of(logic::Machine const&);

// A value of the elements looked at that is reached. Bit i is the i-th of them.
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

// `elements` are memory of the machine; what is left out should follow from them and the inputs, as
// delays outside loops do. Cost: a look-up for each state. Contract: all states are known.
MemoryGraph memory_graph(logic::Machine const&, States const&,
                         std::vector<model::SignalId> const& elements);

// Ascending by from, event, is_on, to. Cost: a look at each transition, and a sort of those that
// change the memory. Contract: successors are known.
std::vector<MemoryChange> memory_changes(States const&, MemoryGraph const&);

// The values that no state has, as rows over the graph's elements, of which there are so many.
// Contract: at most RowSet::most_inputs.
logic::RowSet never_reached(MemoryGraph const&, std::size_t elements);

// Which signals have a say in the memory: its elements, and all that they look at, directly or
// through others. One value a signal.
std::vector<bool> behind_memory(model::Circuit const&);

}  // namespace leat::explore
