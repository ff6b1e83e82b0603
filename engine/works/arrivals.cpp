#include "engine/works/arrivals.hpp"

namespace leat::works {

using logic::Diagram;

Arrivals::Arrivals(model::Design const& plant)
    : is_joined_(plant.inlets.size(), false),
      inlet_behind_(plant.outlets.size()),
      arriving_(plant.profiles.size()) {
  for (auto const& join : plant.joins) {
    is_joined_[join.inlet] = true;
    inlet_behind_[join.outlet] = join.inlet;
  }
}

Function Arrivals::at(model::InletId inlet, model::ProfileId profile, Passages const& passages,
                      Diagram& diagram) {
  if (is_entrance(inlet)) return Diagram::always;
  auto& arriving = arriving_[profile];
  if (arriving.empty()) {
    arriving.assign(is_joined_.size(), Diagram::never);
    for (auto const& [outlet, condition] : passages.everything_reached(profile)) {
      if (!inlet_behind_[outlet]) continue;
      auto& known = arriving[*inlet_behind_[outlet]];
      known = diagram.either(known, condition);
    }
  }
  return diagram.has_run_out() ? Diagram::always : arriving[inlet];
}

}  // namespace leat::works
