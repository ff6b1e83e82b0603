#include "engine/body/pace.hpp"

#include <algorithm>
#include <cmath>

namespace leat::body {

using model::Rule;

namespace {

double per_mille(model::Practice const& practice, Rule rule) { return practice[rule] / 1000.0; }
double per_mille(Surroundings const& here, Rule rule) { return per_mille(here.practice(), rule); }

}  // namespace

Pace pushed(Surroundings const& here, Cell from, Cell to) {
  auto const push = here.push(from);
  auto const won = per_mille(here, Rule::water_push), kept = per_mille(here, Rule::water_drag);
  if (!push.along_x() || !push.along_y()) return {won, kept};
  bool const goes_along_x = here.grid().place(from).x != here.grid().place(to).x;
  auto const share = std::abs(goes_along_x ? push.x : push.y);
  return {won * share / std::hypot(push.x, push.y), kept};
}

Pace risen(Surroundings const& here) {
  auto const stroke = per_mille(here, Rule::upward_stroke) * per_mille(here, Rule::stroke_chance);
  return {stroke - per_mille(here, Rule::water_gravity), per_mille(here, Rule::water_drag)};
}

Pace fallen(Surroundings const& here) {
  auto const kept = per_mille(here, Rule::air_drag);
  return {per_mille(here, Rule::gravity) * kept, kept};
}

Pace sunk(Surroundings const& here) {
  return {per_mille(here, Rule::water_gravity), per_mille(here, Rule::water_drag)};
}

std::optional<int> ticks_for(Pace pace, double cells) {
  constexpr int most_ticks = 100'000;
  double speed = 0, way = 0;
  for (int ticks = 1; ticks <= most_ticks; ++ticks) {
    speed = speed * pace.kept + pace.won;
    way += speed;
    if (way >= cells) return ticks;
  }
  return std::nullopt;
}

double fastest_in_water(model::Practice const& practice) {
  auto const gravity = per_mille(practice, Rule::water_gravity);
  auto const won = std::max({per_mille(practice, Rule::water_push), gravity,
                             per_mille(practice, Rule::upward_stroke) - gravity});
  return terminal_speed({won, per_mille(practice, Rule::water_drag)});
}

double terminal_speed(Pace pace) { return std::max(0.0, pace.won / (1 - pace.kept)); }

}  // namespace leat::body
