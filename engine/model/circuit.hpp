#pragma once
#include <cstdint>
#include <vector>

// Signals and the expressions over them (model section 4). Ids are dense; names live in lang.
namespace leat::model {

using SignalId = std::uint32_t;
using ExpressionId = std::uint32_t;

enum class Operator : std::uint8_t { constant, signal, negation, conjunction, disjunction, parity };

// A node of the expression arena. `left` is the truth value of a constant, the id of a signal, or
// the (first) operand; `right` is the second operand. Operands come before the node that uses them.
struct ExpressionNode {
  Operator op = Operator::constant;
  std::uint32_t left = 0, right = 0;
  bool operator==(ExpressionNode const&) const = default;
};

enum class SignalKind : std::uint8_t { lever, button, plate, clock, wire, latch, toggle, delay };

// Inputs (lever, button, plate, clock) are free: what changes them comes from outside. A wire follows its
// expression. Memory (latch, toggle, delay) keeps a value between events.
struct Signal {
  SignalKind kind = SignalKind::lever;
  bool starts_on = false;       // inputs and memory: the value as built
  ExpressionId definition = 0;  // a wire's; what sets a latch, flips a toggle, feeds a delay
  ExpressionId reset = 0;       // latch only
  int ticks = 0;                // a button's pulse, a delay, half a clock's period
  bool is_input() const { return kind < SignalKind::wire; }
  bool is_memory() const { return kind > SignalKind::wire; }
};

struct Circuit {
  std::vector<ExpressionNode> expressions;
  std::vector<Signal> signals;
  // Wires in an order in which each uses only inputs and earlier wires.
  std::vector<SignalId> wire_order;
  // What never comes about once all is quiet: the builder promises not to bring it about.
  std::vector<ExpressionId> nevers{};

  ExpressionId add(ExpressionNode node) {
    expressions.push_back(node);
    return static_cast<ExpressionId>(expressions.size() - 1);
  }
};

}  // namespace leat::model
