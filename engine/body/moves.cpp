#include "engine/body/moves.hpp"

#include <algorithm>
#include <array>

namespace leat::body {

using model::Rule;

namespace {

// One way down out of the air: into `feet`, and from there under the surface as far as the speed
// carries.
void fall_into(Surroundings const& here, Position to, MoveRule dry_rule, std::vector<Move>& moves) {
  if (!here.are_feet_wet(to.feet)) {
    moves.push_back({to, dry_rule});
    return;
  }
  moves.push_back({to, MoveRule::fall});
  auto const deepest = std::min(to.fallen - 1, here.practice()[Rule::sink_cells]);
  auto under = to;
  for (int depth = 0; depth < deepest; ++depth) {
    under.feet = here.grid().below(under.feet);
    if (!here.are_feet_wet(under.feet) || !here.fits(under.feet)) return;
    moves.push_back({under, MoveRule::sink});
  }
}

// The sides along which the water pushes, x before y.
std::array<Side, 2> sides_pushed_to(Push const& push) {
  return {!push.along_x() ? Side::none
          : push.x > 0    ? Side::east
                          : Side::west,
          !push.along_y() ? Side::none
          : push.y > 0    ? Side::south
                          : Side::north};
}

// A body that does not float goes on down while this holds.
bool may_sink(Surroundings const& here, Cell feet) {
  auto const below = here.grid().below(feet);
  return here.grid().is_inside(below) && here.are_feet_wet(below) && here.fits(below);
}

}  // namespace

void fall(Surroundings const& here, Position at, std::vector<Move>& moves) {
  if (here.is_carried(at.feet)) return;
  auto const fallen = static_cast<std::uint8_t>(std::min(at.fallen + 1, most_fallen));
  auto const below = here.grid().below(at.feet);
  fall_into(here, {below, at.carried_to, fallen}, MoveRule::fall, moves);
  if (at.carried_to == Side::none || fallen < here.practice()[Rule::drift_after]) return;
  auto const beside = here.grid().beside(below, at.carried_to);
  if (here.fits(beside)) fall_into(here, {beside, Side::none, fallen}, MoveRule::drift, moves);
}

void rise(Surroundings const& here, Position at, std::vector<Move>& moves) {
  auto const above = here.grid().above(at.feet);
  if (!here.fits(above)) return;
  Position const to{above, at.carried_to, at.fallen};
  if (here.is_wet_above_feet(at.feet)) {
    moves.push_back({to, MoveRule::rise});
  } else if (here.profile().height >= 2 && here.are_feet_wet(at.feet) &&
             here.is_wet_over_head(at.feet)) {
    moves.push_back({to, MoveRule::rise, !here.is_carried(at.feet)});
  }
}

void push(Surroundings const& here, Position at, std::vector<Move>& moves) {
  for (auto side : sides_pushed_to(here.push(at.feet))) {
    if (side == Side::none) continue;
    auto const beside = here.grid().beside(at.feet, side);
    auto const higher = here.grid().above(beside);
    if (here.fits(beside)) {
      moves.push_back({{beside, side, 0}, MoveRule::push});
    } else if (here.profile().floats && here.are_feet_wet(at.feet) && here.fits(higher) &&
               here.fits(here.grid().above(at.feet))) {
      moves.push_back({{higher, side, 0}, MoveRule::climb, false});
    }
  }
}

void drift(Surroundings const& here, Position at, std::vector<Move>& moves) {
  if (at.carried_to == Side::none || !here.push(at.feet).is_none()) return;
  auto const beside = here.grid().beside(at.feet, at.carried_to);
  if (here.fits(beside)) moves.push_back({{beside, Side::none, 0}, MoveRule::drift});
}

void sink(Surroundings const& here, Position at, std::vector<Move>& moves) {
  moves.push_back({{here.grid().below(at.feet), Side::none, 0}, MoveRule::sink});
}

Position forgetful(Surroundings const& here, Position at) {
  // Under the drawing there is nothing to ask.
  if (here.grid().place(at.feet).z < 0) return at;
  if (here.is_wet(at.feet)) {
    auto const after = static_cast<std::uint8_t>(here.practice()[Rule::drift_after]);
    bool const keeps = at.carried_to != Side::none && at.fallen >= after;
    return keeps ? Position{at.feet, at.carried_to, after} : Position{at.feet, Side::none, 0};
  }
  if (here.is_carried(at.feet)) return {at.feet, Side::none, 0};
  return at;
}

std::vector<Move> moves_from(Surroundings const& here, Position at) {
  std::vector<Move> moves;
  if (!here.is_wet(at.feet)) {
    fall(here, at, moves);
  } else if (!here.profile().floats && may_sink(here, at.feet)) {
    sink(here, at, moves);
  } else {
    if (here.profile().floats) rise(here, at, moves);
    push(here, at, moves);
    if (moves.empty()) drift(here, at, moves);
  }
  for (auto& move : moves) move.to = forgetful(here, move.to);
  return moves;
}

End rest_at(Surroundings const& here, Position at) {
  if (!here.is_wet(at.feet)) return End::dry;
  return here.push(at.feet).is_none() ? End::still : End::pinned;
}

}  // namespace leat::body
