#pragma once
#include <memory>
#include <optional>
#include <vector>

#include "engine/compare/joint_circuit.hpp"
#include "engine/explore/states.hpp"
#include "engine/works/claims.hpp"
#include "engine/works/conditions.hpp"

namespace leat::compare {

using works::Function;

// Where both revisions are told as functions over the same variables: the inputs they share, inputs
// of one alone, and the memory of each.
//
// Idea: the two machines run as one, driven by the same events from as built (the product machine
// of sequential equivalence: O. Coudert, J. C. Madre, 1990, from memory). What is the same in every
// state this one can reach is the same behaviour, whatever the memory inside looks like. Memory of
// the same name that always holds the same value is counted once: `widest` leaves the copy before
// out of conditions. Cost: that of works::Conditions on the joint circuit.
class Ground {
 public:
  struct Revision {
    model::Design const& design;
    std::vector<model::SignalId> const& variables;  // those its results are told over
  };
  Ground(Revision const& before, Revision const& after,
         Counterparts<model::SignalId> const& counterparts, std::size_t most_nodes);
  // One revision by itself, for what was written down of an earlier one: its signals are the joint
  // ones.
  Ground(Revision const& only, std::size_t most_nodes);

  works::Conditions& conditions() { return *conditions_; }
  works::Conditions const& conditions() const { return *conditions_; }
  logic::Diagram& diagram() { return conditions_->diagram(); }
  model::Circuit const& circuit() const { return joint_.circuit; }

  // The joint signal of a signal of either revision, by own id.
  std::vector<model::SignalId> const& before() const { return joint_.before; }
  std::vector<model::SignalId> const& after() const { return joint_.after; }
  // Whether anything that is compared follows from a joint signal.
  bool counts(model::SignalId joint) const { return conditions_->follows_from(joint); }

  // What can come about, and a difference within it: copies of memory left out.
  Function reachable() const { return reachable_; }
  Function widest(Function);
  // How many of the variables stand in these two.
  std::size_t variable_count() const { return conditions_->variables().size() - copies_.size(); }
  // False where the diagram ran out or events lead where nothing comes to rest: equality is then
  // not proved.
  bool is_whole() const;

  // A shortest way to a combination in which the function is true, as flips of joint inputs from as
  // built, and that combination by level; where the states are too many to be searched one by one,
  // the nearest combination, with no way if memory stands in between. None where it is never true.
  struct Example {
    works::Instance instance;
    std::optional<std::vector<model::SignalId>> flips;
  };
  std::optional<Example> nearest(Function where);

 private:
  void lay(std::vector<model::ExpressionId> const& roots, std::vector<model::SignalId> const& order,
           std::size_t most_nodes);
  void leave_out_copies(Counterparts<model::SignalId> const&);
  void search();
  works::Instance as_built() const;

  JointCircuit joint_;
  std::unique_ptr<works::Conditions> conditions_;
  std::vector<logic::Diagram::Level> copies_;  // ascending
  Function reachable_ = logic::Diagram::always;
  bool has_memory_ = false;
  // Where there is memory: the states by events, breadth first, each as an instance.
  bool is_searched_ = false;
  logic::Cone cone_;
  std::optional<explore::States> states_;
  std::vector<works::Instance> instances_;
  std::vector<model::SignalId> events_;  // joint inputs, by event
};

}  // namespace leat::compare
