#include "engine/works/lever_flips.hpp"

#include <algorithm>

#include "engine/works/claims.hpp"

namespace leat::works {

std::vector<model::SignalId> lever_flips(model::Circuit const& plant, Conditions& conditions,
                                         std::vector<model::SignalId> const& flips) {
  auto& diagram = conditions.diagram();
  auto const& variables = conditions.variables();
  Instance values;
  for (auto variable : variables) values.push_back(plant.signals[variable].starts_on);
  std::vector<model::SignalId> inputs;
  auto const flip = [&](std::size_t level) {
    inputs.push_back(variables[level]);
    values[level] = !values[level];
  };
  for (auto signal : flips) {
    if (plant.signals[signal].kind != model::SignalKind::wire) {
      auto const at = std::find(variables.begin(), variables.end(), signal) - variables.begin();
      flip(static_cast<std::size_t>(at));
      continue;
    }
    auto const wire = conditions.of_signal(signal);
    auto const changed = diagram.is_true(wire, values) ? !wire : wire;
    auto next = nearest(diagram, diagram.both(changed, conditions.reachable()), values);
    if (!next) next = nearest(diagram, changed, values);
    if (!next) break;
    for (std::size_t level = 0; level < values.size(); ++level)
      if ((*next)[level] != values[level]) flip(level);
  }
  return inputs;
}

}  // namespace leat::works
