#pragma once
#include <cstdint>
#include <optional>
#include <unordered_map>
#include <unordered_set>
#include <vector>

#include "engine/logic/cone.hpp"
#include "engine/logic/diagram.hpp"
#include "engine/logic/row_set.hpp"

namespace leat::works {

using Function = logic::Diagram::Function;

// Expressions of a plant as functions of its inputs and memory, once all has settled, and the
// combinations of these that can come about. Cost: that of the diagrams, which the budget of nodes
// holds down; when it is used up, diagram().has_run_out() holds.
class Conditions {
 public:
  // `roots`: the expressions that will be asked for. `order`: signals in the order in which their
  // variables are to be tested, the first one highest; others come after them.
  Conditions(model::Circuit const&, std::vector<model::ExpressionId> const& roots,
             std::vector<model::SignalId> const& order, std::size_t most_nodes);

  // Inputs and memory that the roots follow from, as the plant's signals, by level.
  std::vector<model::SignalId> const& variables() const { return variables_; }
  // Contract: one of the roots.
  Function of(model::ExpressionId root) const;
  // Contract: a signal that the roots follow from.
  Function of_signal(model::SignalId) const;
  // Whether the roots follow from it.
  bool follows_from(model::SignalId signal) const { return own_signal_.count(signal) != 0; }
  // The rows as a function of what stands for each of their inputs.
  Function of(logic::RowSet const&, std::vector<Function> const& inputs);

  // The combinations that can come about; more than these where that is not known.
  Function reachable() const { return reachable_; }
  bool is_reachable_known() const { return is_reachable_known_; }
  // After some event the logic never comes to rest.
  bool has_restless() const { return has_restless_; }
  // The same, or it is not known.
  bool may_be_restless() const { return has_restless_ || has_too_many_states_; }
  // The memory has more states than could be followed: what can come about is not known, nor
  // whether all gets quiet.
  bool has_too_many_states() const { return has_too_many_states_; }

  bool has_memory() const;
  // The combinations that can come about and in which a flip of an input changes this input, or
  // this wire, to another one that can come about. Contract: a wire follows from inputs alone; what
  // can come about is known.
  Function flippable(model::SignalId);
  // Whether some flip of this input changes memory among the variables. Contract: what can come
  // about is known.
  bool changes_memory(model::SignalId input) const;

  logic::Diagram& diagram() { return diagram_; }
  logic::Diagram const& diagram() const { return diagram_; }

 private:
  void number(model::Circuit const& settled, std::vector<model::SignalId> const& order);
  void follow(model::Circuit const& settled);
  void reach();
  void find_states();
  Function kept();
  Function inputs_as_built();
  Function reached_by_flips(Function kept);
  Function flippable_at(logic::Diagram::Level);

  logic::Cone cone_;
  logic::Diagram diagram_;
  std::vector<model::SignalId> variables_;
  std::vector<Function> of_own_signal_, of_own_expression_;  // by the cone's ids
  std::unordered_map<model::SignalId, model::SignalId> own_signal_;
  std::unordered_map<model::ExpressionId, model::ExpressionId> own_root_;
  std::unordered_set<model::SignalId> changing_memory_;
  std::vector<std::optional<Function>> done_from_;  // by level; none: from wherever can come about
  Function reachable_ = logic::Diagram::always;
  bool is_reachable_known_ = true, has_restless_ = false, has_too_many_states_ = false;
};

}  // namespace leat::works
