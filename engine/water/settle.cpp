#include "engine/water/settle.hpp"

#include <algorithm>
#include <limits>

#include "engine/water/settling.hpp"
#include "engine/water/step.hpp"

namespace leat::water {

namespace {

Settled repeat_step(model::Arrangement const& arrangement, Field start, int most_steps) {
  Settled result{std::move(start), 0};
  for (;; ++result.steps) {
    auto after = step(arrangement, result.field);
    if (after == result.field) return result;
    result.is_settled = result.steps < most_steps;
    if (!result.is_settled) return result;
    result.field = std::move(after);
  }
}

Settled run(Settling settling, int most_steps) {
  bool const is_settled = settling.run(most_steps);
  return {settling.take_field(), settling.steps(), is_settled};
}

}  // namespace

int most_steps(model::Arrangement const& arrangement) {
  auto const states = arrangement.practice()[model::Rule::source_strength] + 1;
  auto const steps = static_cast<long>(arrangement.grid().volume()) * states;
  return static_cast<int>(std::min<long>(steps, std::numeric_limits<int>::max()));
}

Settled settle_reference(model::Arrangement const& arrangement) {
  return repeat_step(arrangement, dry_field(arrangement), most_steps(arrangement));
}

Settled settle_fresh(model::Arrangement const& arrangement) {
  return run(Settling(arrangement), most_steps(arrangement));
}

Settled settle_switched(model::Arrangement const& before, Field const& field,
                        model::Arrangement const& after, bool was_settled) {
  return run(Settling(before, field, after, was_settled), most_steps(after));
}

Settled settle_switched_reference(model::Arrangement const& before, Field const& field,
                                  model::Arrangement const& after) {
  return repeat_step(after, switched(before, field, after), most_steps(after));
}

}  // namespace leat::water
