#include "engine/model/joins.hpp"

#include <utility>

namespace leat::model {

Joins::Joins(Design const& plant)
    : from_(plant.outlets.size()), is_led_to_(plant.inlets.size(), false) {
  for (auto const& join : plant.joins) {
    from_[join.outlet] = join;
    is_led_to_[join.inlet] = true;
  }
}

Joins::Joins(std::size_t inlet_count, std::vector<std::optional<Join>> from_outlet)
    : from_(std::move(from_outlet)), is_led_to_(inlet_count, false) {
  for (auto const& join : from_) {
    if (join) is_led_to_[join->inlet] = true;
  }
}

}  // namespace leat::model
