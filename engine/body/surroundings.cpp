#include "engine/body/surroundings.hpp"

#include <algorithm>
#include <cmath>

namespace leat::body {

using model::sides;

Surroundings::Surroundings(model::Arrangement const& arrangement, water::Field const& field,
                           model::Profile const& profile)
    : now_{arrangement, field}, profile_(profile) {}

// Whether `test` holds for one of the feet-level cells of the footprint.
template <class Test>
bool Surroundings::any_column(Cell feet, Test test) const {
  auto row = feet;
  for (int y = 0; y < profile_.footprint; ++y, row = grid().beside(row, Side::south)) {
    auto c = row;
    for (int x = 0; x < profile_.footprint; ++x, c = grid().beside(c, Side::east)) {
      if (test(c)) return true;
    }
  }
  return false;
}

bool Surroundings::fits(Cell feet) const {
  return !any_column(feet, [&](Cell c) {
    for (int level = 0; level < profile_.height; ++level) {
      if (!now_.arrangement[grid().raised(c, level)].body_enters) return true;
    }
    return false;
  });
}

bool Surroundings::is_wet_from(Cell feet, int level) const {
  return any_column(feet, [&](Cell c) {
    for (int at = level; at < profile_.height; ++at) {
      if (now_.is_wet(grid().raised(c, at))) return true;
    }
    return false;
  });
}

bool Surroundings::are_feet_wet(Cell feet) const {
  return any_column(feet, [&](Cell c) { return now_.is_wet(c); });
}

bool Surroundings::is_wet_over_head(Cell feet) const {
  return any_column(feet, [&](Cell c) { return now_.is_wet(grid().raised(c, profile_.height)); });
}

bool Surroundings::is_carried(Cell feet) const {
  return any_column(feet, [&](Cell c) {
    auto const& under = now_.arrangement[grid().below(c)];
    return under.carries || !under.body_enters;
  });
}

Push Surroundings::push(Cell feet) const {
  Push sum;
  any_column(feet, [&](Cell c) {
    for (int level = 0; level < profile_.height; ++level) {
      auto const part = push_in(grid().raised(c, level));
      sum.x += part.x;
      sum.y += part.y;
    }
    return false;
  });
  return sum;
}

// The unit vector of the current in one cell. Falling water that runs down beside something solid
// mostly pushes downward, so that little of it is left sideways.
Push Surroundings::push_in(Cell c) const {
  auto const current = water::current_at(now_, c);
  if (current == water::Current{}) return {};
  auto size = std::hypot(current.x, current.y);
  bool const is_beside_solid = std::any_of(sides.begin(), sides.end(), [&](Side side) {
    auto const n = grid().beside(c, side);
    return now_.arrangement[n].carries || now_.arrangement[grid().above(n)].carries;
  });
  if (now_.field[c] == water::falling && is_beside_solid) {
    size *= std::sqrt(practice()[model::Rule::falling_slope]);
  }
  return {current.x / size, current.y / size};
}

}  // namespace leat::body
