#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/explore/memory_graph.hpp"
#include "lang/render/look.hpp"
#include "lang/render/subject.hpp"

// The state machine of a design's signals, told in three ways.
namespace leat::render {

struct MachineSheet {
  Subject subject;  // any junction: the signals are those of the whole design
  // The inputs that have a say in the memory, those that have none, and the memory elements.
  std::vector<model::SignalId> inputs, left_out, memory;
  bool is_decided = false;  // false: too many variables, states or rounds: nothing is known
  explore::States states;
  explore::MemoryGraph graph;
  std::vector<explore::MemoryChange> changes;
  std::vector<std::uint32_t> without_return;  // states
  // Rows over the memory elements; none where they are too many to be told as a condition.
  std::optional<logic::RowSet> never_reached;
  // Where the states are too many to be listed: what decision diagrams know of them.
  struct Counted {
    double states = 0;
    std::vector<model::SignalId> unquiet;  // inputs after which something never gets quiet
  };
  std::optional<Counted> counted{};
};

std::string machine_text(MachineSheet const&, Look);

// Whether the document can hold every value with its events: a counter's take longer and longer.
bool is_listable(MachineSheet const&);

// leat-machine: `leat machine --as json`. Contract: listable.
std::string machine_document(MachineSheet const&);

// A graph in the DOT language: a node for each value of the memory, or, with `is_full`, for each
// state.
std::string machine_dot(MachineSheet const&, bool is_full);

// "flip divert on", "press ring", "let go of ring", "leave passed", "beat goes off"
std::string event_words(model::SignalKind, std::string const& name, bool is_on);

// The events from as built to a state: the input and whether it goes on.
struct Event {
  model::SignalId input = 0;
  bool is_on = false;
};
std::vector<Event> events_to(MachineSheet const&, std::uint32_t state);
// "press ring, flip divert on"; "as built" where there is none. What repeats from the first event
// to the last is said once, with how many times; of other long sequences the beginning is told.
std::string events_words(MachineSheet const&, std::vector<Event> const&);

}  // namespace leat::render
