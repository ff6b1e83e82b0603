#include "engine/works/arrivals.hpp"

namespace leat::works {

using logic::Diagram;

Arrivals::Arrivals(model::Design const& plant)
    : is_joined_(plant.inlets.size(), false), inlet_behind_(plant.outlets.size()) {
  for (auto const& join : plant.joins) {
    is_joined_[join.inlet] = true;
    inlet_behind_[join.outlet] = join.inlet;
  }
}

Function Arrivals::at(model::InletId inlet, Passages const& passages, Diagram& diagram) {
  if (!is_joined_[inlet]) return Diagram::always;
  if (!arriving_) {
    arriving_.emplace(is_joined_.size(), Diagram::never);
    for (auto const& [outlet, condition] : passages.everything_reached()) {
      if (!inlet_behind_[outlet]) continue;
      auto& arriving = (*arriving_)[*inlet_behind_[outlet]];
      arriving = diagram.either(arriving, condition);
    }
  }
  return diagram.has_run_out() ? Diagram::always : (*arriving_)[inlet];
}

}  // namespace leat::works
