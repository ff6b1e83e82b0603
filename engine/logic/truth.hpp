#pragma once
#include <vector>

#include "engine/logic/row_set.hpp"
#include "engine/model/circuit.hpp"

namespace leat::logic {

// The truth tables of a circuit without memory: for every signal and expression the rows in which
// it is on, over the chosen inputs. Inputs that are not among them stand as built. Cost: one pass
// over 2^k bits for each operator. The circuit must outlive it.
class Truth {
 public:
  Truth(model::Circuit const&, std::vector<model::SignalId> inputs);

  std::vector<model::SignalId> const& inputs() const { return inputs_; }
  int input_count() const { return static_cast<int>(inputs_.size()); }
  Row row_count() const { return Row{1} << inputs_.size(); }
  RowSet const& of_signal(model::SignalId s) const { return of_signal_[s]; }
  RowSet of(model::ExpressionId) const;
  // The row in which every input stands as built.
  Row as_built() const;
  bool is_on(Row row, std::size_t input) const {
    return (row >> (inputs_.size() - 1 - input) & 1u) != 0;
  }

 private:
  model::Circuit const* circuit_;
  std::vector<model::SignalId> inputs_;
  std::vector<RowSet> of_signal_;
};

// An expression's value, given every signal's.
bool is_true(model::Circuit const&, model::ExpressionId, std::vector<bool> const& signals);

// Which signals the expressions depend on by their text, through wires: one value a signal.
std::vector<bool> used_signals(model::Circuit const&, std::vector<model::ExpressionId> const&);

}  // namespace leat::logic
