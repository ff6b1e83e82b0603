#pragma once
#include <cstdint>
#include <span>
#include <vector>

#include "engine/model/circuit.hpp"

namespace leat::logic {

// One bit for each of 64 machines that are run side by side.
using Lanes = std::uint64_t;
inline constexpr int lane_count = 64;

// A circuit compiled to straight-line code over registers of 64 lanes: register s is signal s,
// those above hold intermediate values. Wires are computed in dependency order, then what memory
// elements look at. Cost: one machine word operation for each operator, for 64 machines at once.
class Program {
 public:
  explicit Program(model::Circuit const&);

  std::size_t register_count() const { return register_count_; }
  // Reads the registers of inputs and memory; writes those of wires and of the expressions below.
  void run(std::span<Lanes> registers) const;

  // What a memory element looks at: the register of its definition, and of its reset.
  struct Memory {
    model::SignalId signal = 0;
    model::SignalKind kind{};
    std::uint32_t definition = 0, reset = 0;
  };
  std::vector<Memory> const& memories() const { return memories_; }

  // register `to` = left op right. `left` is the truth value of a constant; what stands as a copy
  // has the operator `signal`.
  struct Instruction {
    model::Operator op{};
    std::uint32_t to = 0, left = 0, right = 0;
    bool has_left() const { return op != model::Operator::constant; }
    bool has_right() const { return has_left() && op > model::Operator::negation; }
  };
  // In an order in which each reads only inputs, memory and what stands before it.
  std::vector<Instruction> const& instructions() const { return code_; }

 private:
  class Compiler;
  std::size_t register_count_ = 0;
  std::vector<Instruction> code_;
  std::vector<Memory> memories_;
};

}  // namespace leat::logic
