#pragma once
#include <optional>
#include <vector>

#include "engine/model/design.hpp"

namespace leat::model {

// The joins of a works, asked from either end.
class Joins {
 public:
  Joins() = default;  // of no works
  explicit Joins(Design const& plant);
  // Of any other network: the join that begins at each outlet.
  Joins(std::size_t inlet_count, std::vector<std::optional<Join>> from_outlet);

  std::size_t inlet_count() const { return is_led_to_.size(); }
  std::size_t outlet_count() const { return from_.size(); }
  // The join that begins at an outlet; none where bodies leave the works.
  std::optional<Join> const& from(OutletId outlet) const { return from_[outlet]; }
  bool is_joined(OutletId outlet) const { return from_[outlet].has_value(); }
  // Whether bodies enter there from outside: no join leads to it.
  bool is_entrance(InletId inlet) const { return !is_led_to_[inlet]; }

 private:
  std::vector<std::optional<Join>> from_;
  std::vector<bool> is_led_to_;
};

}  // namespace leat::model
