#include "engine/logic/program.hpp"

#include <limits>

#include "engine/contract.hpp"

namespace leat::logic {

using model::ExpressionId;
using model::Operator;

// Gives every expression node that is needed a register and an instruction, each once. Walks with a
// stack of its own, so that neither long chains nor deep nesting matter.
class Program::Compiler {
 public:
  Compiler(model::Circuit const& circuit, Program& program)
      : circuit_(circuit), program_(program), register_of_(circuit.expressions.size(), none) {
    program_.register_count_ = circuit.signals.size();
  }

  std::uint32_t compile(ExpressionId root) {
    std::vector<ExpressionId> open{root};
    while (!open.empty()) {
      auto const id = open.back();
      if (register_of_[id] != none || is_ready(id, open)) open.pop_back();
    }
    return register_of_[root];
  }

  void assign(std::uint32_t to, std::uint32_t from) {
    program_.code_.push_back({Operator::signal, to, from, 0});
  }

 private:
  static constexpr auto none = std::numeric_limits<std::uint32_t>::max();

  // Emits the node if its operands have registers; else lists these first.
  bool is_ready(ExpressionId id, std::vector<ExpressionId>& open) {
    auto const& node = circuit_.expressions[id];
    if (node.op == Operator::signal) {
      register_of_[id] = node.left;
      return true;
    }
    bool const is_unary = node.op == Operator::negation, is_leaf = node.op == Operator::constant;
    bool const needs_left = !is_leaf && register_of_[node.left] == none;
    bool const needs_right = !is_leaf && !is_unary && register_of_[node.right] == none;
    if (needs_left) open.push_back(node.left);
    if (needs_right) open.push_back(node.right);
    if (needs_left || needs_right) return false;
    auto const to = static_cast<std::uint32_t>(program_.register_count_++);
    auto const left = is_leaf ? node.left : register_of_[node.left];
    auto const right = is_leaf || is_unary ? 0 : register_of_[node.right];
    program_.code_.push_back({node.op, to, left, right});
    register_of_[id] = to;
    return true;
  }

  model::Circuit const& circuit_;
  Program& program_;
  std::vector<std::uint32_t> register_of_;
};

Program::Program(model::Circuit const& circuit) {
  Compiler compiler(circuit, *this);
  for (auto wire : circuit.wire_order) {
    compiler.assign(wire, compiler.compile(circuit.signals[wire].definition));
  }
  for (model::SignalId s = 0; s < circuit.signals.size(); ++s) {
    auto const& signal = circuit.signals[s];
    if (!signal.is_memory()) continue;
    Memory memory{s, signal.kind, compiler.compile(signal.definition), 0};
    if (signal.kind == model::SignalKind::latch) memory.reset = compiler.compile(signal.reset);
    memories_.push_back(memory);
  }
}

void Program::run(std::span<Lanes> registers) const {
  require(registers.size() >= register_count_, "Program::run: too few registers");
  for (auto const& step : code_) {
    auto& to = registers[step.to];
    switch (step.op) {
      case Operator::constant:
        to = step.left != 0 ? ~Lanes{0} : 0;
        break;
      case Operator::signal:
        to = registers[step.left];
        break;
      case Operator::negation:
        to = ~registers[step.left];
        break;
      case Operator::conjunction:
        to = registers[step.left] & registers[step.right];
        break;
      case Operator::disjunction:
        to = registers[step.left] | registers[step.right];
        break;
      case Operator::parity:
        to = registers[step.left] ^ registers[step.right];
        break;
    }
  }
}

}  // namespace leat::logic
