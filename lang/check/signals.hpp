#pragma once
#include <string>
#include <vector>

#include "engine/model/circuit.hpp"
#include "engine/model/practice.hpp"
#include "lang/check/reading.hpp"

namespace leat::check {

// The signals of the file, in so far as they are more than names.
struct Signals {
  std::vector<model::SignalId> wire_order;  // each wire after the signals it uses
  bool is_sound = true;                     // no loop of wires
};

// Reports unknown signals in every expression of the file, loops of wires without memory, and times
// out of range.
Signals read_signals(Reading const&, model::Practice const&);

// A time that was found to be in range.
int ticks_of(syntax::Duration const&, int ticks_a_second);

// Reports a time out of range; `of_what` says whose: "The signal 'late'".
bool is_in_range(Reading const&, syntax::Duration const&, std::string const& of_what,
                 int ticks_a_second);

// Calls `visit(Expression const&)` for every named signal in an expression.
template <class Visit>
void for_each_name(syntax::Expression const& expression, Visit&& visit) {
  if (expression.kind == syntax::ExpressionKind::name) visit(expression);
  for (auto const& operand : expression.operands) for_each_name(operand, visit);
}

}  // namespace leat::check
