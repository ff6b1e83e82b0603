#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "lang/check/names.hpp"
#include "lang/check/signals.hpp"

namespace leat::check {

// Finds conditions that never change, whatever the inputs. Asked of every switched mark of a file,
// so the work is bounded: a condition on more inputs or wires than it will follow is not called
// constant.
class ConstantFinder {
 public:
  // The signals must be sound: every wire ordered, every name known.
  ConstantFinder(Names const&, Signals const&);
  std::optional<bool> constant_value(syntax::Expression const&);

 private:
  using Column =
      std::vector<std::uint64_t>;  // one truth value a bit, for each setting of the inputs
  struct Cone {
    std::vector<model::SignalId> inputs, wires;  // wires in order
  };
  std::optional<Cone> cone_of(syntax::Expression const&);
  Column evaluate(syntax::Expression const&, std::size_t words);

  Names const& names_;
  std::vector<std::size_t> rank_;  // of each wire in the order
  std::vector<Column> columns_;    // by signal; filled for the cone in hand
  std::size_t work_left_;
};

}  // namespace leat::check
