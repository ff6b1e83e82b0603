#include "engine/water/step.hpp"

#include <algorithm>

#include "engine/water/intrinsic.hpp"
#include "engine/water/spread.hpp"

namespace leat::water {

namespace {

bool is_offered(Moment const& now, Cell c) {
  return std::any_of(model::sides.begin(), model::sides.end(), [&](model::Side side) {
    auto const n = now.grid().beside(c, side);
    // Sides are numbered round the compass: two further on lies the opposite one, from n to c.
    auto const back = model::sides[(static_cast<std::size_t>(side) + 2) % 4];
    return now.strength(n) >= 2 && offers(now, n, back);
  });
}

}  // namespace

State next_state(Moment const& now, Cell c) {
  auto const& made_of = now.arrangement[c];
  if (!made_of.water_enters) return dry;
  if (made_of.is_source || now.is_source(c)) return source;
  if (now.is_wet(c) || now.is_wet(now.grid().above(c)) || is_offered(now, c)) {
    return intrinsic(now, c);
  }
  return dry;
}

Field step(model::Arrangement const& arrangement, Field const& before) {
  Moment const now{arrangement, before};
  Field after(before.size());
  for (Cell c = 0; c < before.size(); ++c) {
    if (now.grid().is_inside(c)) after[c] = next_state(now, c);
  }
  return after;
}

Field dry_field(model::Arrangement const& arrangement) {
  return Field(arrangement.grid().size());
}

}  // namespace leat::water
