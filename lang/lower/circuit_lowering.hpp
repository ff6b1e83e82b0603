#pragma once
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>
#include <vector>

#include "engine/model/circuit.hpp"
#include "lang/check/meaning.hpp"

namespace leat::lower {

// Turns expressions over names into the engine's arena. Each written expression, and each signal as
// an operand, is put there once for each scope, however many conditions use it.
class CircuitLowering {
 public:
  using Scope = check::Scopes::Id;

  // Begins with all signals of the file and the definitions of its wires. `scopes`: those of a
  // works; both must outlive it.
  explicit CircuitLowering(check::Meaning const&, check::Scopes const* scopes = nullptr);

  // Names mean what they do in the scope.
  model::ExpressionId lower(syntax::Expression const&, Scope = check::Scopes::file);
  // None where the condition always holds.
  std::optional<model::ExpressionId> lower(check::Condition const&);
  // The signal that a place has to itself, or the file's.
  model::SignalId signal_in(Scope, model::SignalId);

  // A signal that a place has to itself, or what an expression is that is given for one of the
  // file's, as a wire; their ids follow those of the file in this order.
  struct Own {
    Scope scope = check::Scopes::file;
    model::SignalId signal = 0;  // of the file
  };
  std::vector<Own> const& own_signals() const { return own_; }
  model::Circuit circuit() const;

 private:
  model::ExpressionId operand(model::SignalId);
  model::ExpressionId meant(Scope, model::SignalId);
  model::ExpressionId meant(Scope, std::string const& name);
  model::ExpressionId lower_in(syntax::Expression const&, Scope);
  void define_open();
  model::ExpressionId negated(model::ExpressionId);
  model::ExpressionId any_of(check::Earlier const&);
  model::ExpressionId chained(model::Operator, std::vector<model::ExpressionId> const&);

  check::Names const& names_;
  check::Scopes const* scopes_;
  std::vector<model::SignalId> wire_order_;  // of the file
  std::vector<Own> own_;
  std::map<std::pair<Scope, model::SignalId>, model::SignalId> own_id_;
  std::vector<std::size_t> undefined_;  // of own_: their definitions are not lowered yet
  model::Circuit circuit_;
  std::vector<std::optional<model::ExpressionId>> operands_;  // by signal
  std::map<std::pair<syntax::Expression const*, Scope>, model::ExpressionId> known_;
  // For each list of earlier conditions: the first one, the first or the second, and so on.
  std::unordered_map<void const*, std::vector<model::ExpressionId>> any_of_first_;
};

}  // namespace leat::lower
