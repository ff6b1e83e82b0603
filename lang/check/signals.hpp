#pragma once
#include <vector>

#include "engine/model/circuit.hpp"
#include "engine/model/practice.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// The signals of the file, in so far as they are more than names.
struct Signals {
  std::vector<model::SignalId> wire_order;  // each wire after the signals it uses
  bool is_sound = true;                     // every signal can be followed to its inputs
};

// Reports unknown signals in every expression of the file, loops of wires, durations out of range,
// and what this version does not verify.
Signals read_signals(Reading const&, model::Practice const&);

// Calls `visit(Expression const&)` for every named signal in an expression.
template <class Visit>
void for_each_name(syntax::Expression const& expression, Visit&& visit) {
  if (expression.kind == syntax::ExpressionKind::name) visit(expression);
  for (auto const& operand : expression.operands) for_each_name(operand, visit);
}

}  // namespace leat::check
