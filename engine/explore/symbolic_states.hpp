#pragma once
#include <cstdint>
#include <vector>

#include "engine/logic/symbolic_machine.hpp"

namespace leat::explore {

struct Limits {
  std::size_t most_nodes = std::size_t{1} << 22;  // of the diagram, about 35 bytes each
  std::size_t most_rounds = 4096;                 // until all is quiet after an event
  std::uint32_t deepest = 8192;  // of the diagram; a step of saturation takes 700 bytes of stack
};

// The set of settled states that a circuit can reach from as built, as a function of its variables;
// for circuits whose states are too many to be numbered, or whose variables too many for a code.
// Events that would lead to what is promised never to come about are not done (see States).
class SymbolicStates {
 public:
  // Whether the set is known. Where it is not, the other answers mean nothing.
  enum class Knowledge : std::uint8_t {
    complete,
    out_of_nodes,   // the diagrams grew past the budget, or too deep
    out_of_rounds,  // from a state that can be reached, it is not known whether all gets quiet
  };

  // The circuit must outlive it. Cost: up to 2^16 states are numbered one by one after all, which
  // no form of theirs makes dear; else that of the diagrams, which no bound but the budget holds
  // down. Small where states are a product of parts, or counters, rings and the like; large where
  // many variables far from each other in the order are compared.
  SymbolicStates(model::Circuit const&, Limits = {});
  SymbolicStates(model::Circuit&&, Limits = {}) = delete;

  Knowledge knowledge() const { return knowledge_; }
  // Inputs, then memory elements, each in the order of their ids.
  std::vector<model::SignalId> const& variables() const { return machine_.variables(); }
  std::size_t input_count() const { return machine_.input_count(); }

  // Exact up to 2^64, then as exact as a long double; infinite past 2^16383.
  long double count() const { return count_of(states_); }
  // Whether the state can be reached; one value for each variable.
  bool contains(std::vector<bool> const& values) const { return is_in(states_, values); }

  // The set itself: level 2p of the diagram belongs to the variable at place p.
  logic::Diagram const& diagram() const { return diagram_; }
  logic::Diagram::Function states() const { return states_; }
  std::vector<logic::Diagram::Level> const& places() const { return machine_.places(); }

  // The circuit as built never gets quiet: there is no state.
  bool is_unquiet_as_built() const { return is_unquiet_as_built_; }
  // The states that can be reached and after which the event never gets quiet.
  long double unquiet_count(std::size_t event) const { return count_of(unquiet_[event]); }
  bool is_unquiet(std::vector<bool> const& values, std::size_t event) const {
    return is_in(unquiet_[event], values);
  }

  // Whether the event changes what a memory element holds, from some state that can be reached; the
  // variable by its place among the variables.
  bool can_change(std::size_t event, std::size_t variable) const {
    return changing_[event][variable - input_count()];
  }

  // The states that can be reached and from which the event is done: it gets quiet, and does not
  // lead to what is promised never to come about.
  logic::Diagram::Function done_from(std::size_t event) const { return done_from_[event]; }

  // What the diagram cost: all nodes made, and those of the set.
  std::size_t nodes_made() const { return diagram_.node_count(); }
  std::size_t nodes_of_states() const { return diagram_.size(states_); }

 private:
  using Function = logic::Diagram::Function;
  Knowledge explore(model::Circuit const&, Limits const&);
  Function promised_away(model::Circuit const&, std::vector<Function> const& after);
  void look_back(std::vector<logic::SymbolicMachine::Outcome> const&,
                 std::vector<Function> const& not_done);
  Function state_of(std::vector<Function> const& values);
  long double count_of(Function) const;
  bool is_in(Function, std::vector<bool> const& values) const;

  logic::Diagram diagram_;
  logic::SymbolicMachine machine_;
  Knowledge knowledge_ = Knowledge::complete;
  Function states_ = logic::Diagram::never;
  std::vector<Function> unquiet_;            // by event
  std::vector<Function> done_from_;          // by event
  std::vector<std::vector<bool>> changing_;  // by event, then memory element
  bool is_unquiet_as_built_ = false;
};

}  // namespace leat::explore
