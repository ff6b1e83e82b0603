#include "engine/compare/changes.hpp"

namespace leat::compare {

using logic::Diagram;

void compare_values(Sides const& sides, Comparison& comparison) {
  auto& ground = sides.ground;
  auto& diagram = ground.diagram();
  for (model::SignalId s = 0; s < sides.matching.signals.size(); ++s) {
    auto const same = sides.matching.signals[s];
    if (!same) continue;
    auto const before = ground.before()[s], after = ground.after()[*same];
    if (before == after || !ground.counts(before) || !ground.counts(after)) continue;
    auto const condition = ground.widest(diagram.differ(ground.conditions().of_signal(before),
                                                        ground.conditions().of_signal(after)));
    if (condition != Diagram::never)
      comparison.values.push_back({s, *same, condition, ground.nearest(condition)});
  }
}

}  // namespace leat::compare
