#include "engine/works/arrivals.hpp"

namespace leat::works {

using logic::Diagram;

Arrivals::Arrivals(model::Design const& plant) : joins_(plant), arriving_(plant.profiles.size()) {}

Function Arrivals::at(model::InletId inlet, model::ProfileId profile, Passages const& passages,
                      Diagram& diagram) {
  if (is_entrance(inlet)) return Diagram::always;
  auto& arriving = arriving_[profile];
  if (arriving.empty()) {
    arriving.assign(joins_.inlet_count(), Diagram::never);
    for (auto const& [outlet, condition] : passages.everything_reached(profile)) {
      auto const& join = joins_.from(outlet);
      if (!join) continue;
      auto& known = arriving[join->inlet];
      known = diagram.either(known, condition);
    }
  }
  return diagram.has_run_out() ? Diagram::always : arriving[inlet];
}

}  // namespace leat::works
