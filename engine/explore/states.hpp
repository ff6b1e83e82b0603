#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/logic/machine.hpp"

namespace leat::explore {

using logic::Code;

// An event after which the logic never gets quiet.
struct Unquiet {
  std::uint32_t state = 0;  // the settled state before it
  std::size_t event = 0;
  logic::Oscillation oscillation;
};

// Where the search of states ended, since so many rounds did not tell whether the logic gets quiet:
// after a flip of this input, or as built where there is none.
struct Unended {
  std::optional<model::SignalId> input;
  std::size_t rounds = 0;
};

// Every settled state a machine can reach from as built, numbered breadth first: state 0 is as
// built, and following `parent` back gives a shortest event sequence. Event e is a flip of input e.
struct States {
  static constexpr std::uint32_t none = 0xffffffffu;

  std::vector<Code> codes;
  // state * events + event; none where the event does not get quiet, or past the budget. Empty
  // where successors were left out.
  std::vector<std::uint32_t> next;
  std::vector<std::uint32_t> parent;  // state 0: none
  std::vector<std::uint8_t> event_from_parent;
  std::size_t events = 0;
  bool is_complete = false;  // false: the budget ran out, and nothing is known of the rest
  std::vector<Unquiet> unquiet;
  std::optional<Unended> unended;  // then it is not complete either
  // Where the circuit as built does not get quiet, there is no state at all.
  std::optional<logic::Oscillation> unquiet_as_built;

  std::size_t size() const { return codes.size(); }
  std::uint32_t after(std::uint32_t state, std::size_t event) const {
    return next[state * events + event];
  }
  // The events from as built to the state, a shortest list.
  std::vector<std::size_t> events_to(std::uint32_t state) const;
};

// Whether States::next is made. Without it the states, their shortest sequences and what does not
// get quiet are found alike, in a third of the time where states are many.
enum class Successors : std::uint8_t { tabled, left_out };

// Events that would lead to what never comes about are not done, and have no successor. The state
// as built is there whatever it is.
//
// Breadth first; what the events change is worked out for a block of states at a time, and events
// that touch nothing in common are tried in one order only (Awake). Cost: for each block and event
// the part of the circuit that hangs on the event; for each event that is tried one look-up of a
// bit; for each transition one of a number where successors are tabled. Limit: states that are no
// parity of each other's variables and spread over many variables are looked up by hashing, some
// times slower. Rounds of states that settle slowly are bounded together, to four times what one
// settling may take.
States reach(logic::Machine const&, std::size_t most_states = std::size_t{1} << 20,
             Successors = Successors::tabled);

// Whether from every state the one as built can be reached again (strong components, Boost.Graph);
// if not, the states from which it cannot. Contract: successors are tabled.
std::vector<std::uint32_t> without_return(States const&);

}  // namespace leat::explore
