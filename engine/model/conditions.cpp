#include "engine/model/conditions.hpp"

namespace leat::model {

std::vector<ExpressionId> conditions_of(Design const& design) {
  std::vector<ExpressionId> roots;
  auto const add = [&](std::optional<ExpressionId> const& id) {
    if (id) roots.push_back(*id);
  };
  for (auto const& fill : design.fills) add(fill.control);
  for (auto const& expectation : design.expectations) add(expectation.condition);
  for (auto const& acceptance : design.acceptances) add(acceptance.condition);
  roots.insert(roots.end(), design.circuit.nevers.begin(), design.circuit.nevers.end());
  return roots;
}

}  // namespace leat::model
