#include "engine/works/frame.hpp"

#include <utility>

namespace leat::works {

using model::Cell;
using model::Place;
using model::Side;

namespace {

Place between(Place from, Place to) { return {to.x - from.x, to.y - from.y, to.z - from.z}; }

Side side_of(Place step) {
  if (step.x != 0) return step.x > 0 ? Side::east : Side::west;
  return step.y > 0 ? Side::south : Side::north;
}

std::size_t number(Side side) { return static_cast<std::size_t>(side); }

}  // namespace

Frame::Frame(Copy const& where, model::Grid const& own, model::Grid const& whole)
    : own_(&own),
      whole_(&whole),
      first_(place_in_plant(where, own, {0, 0, 0})),
      east_(between(first_, place_in_plant(where, own, {1, 0, 0}))),
      south_(between(first_, place_in_plant(where, own, {0, 1, 0}))) {
  side_in_whole_.fill(Side::none);
  own_side_.fill(Side::none);
  Place const west{-east_.x, -east_.y, 0}, north{-south_.x, -south_.y, 0};
  for (auto const& [side, step] : {std::pair{Side::east, east_}, std::pair{Side::south, south_},
                                   std::pair{Side::west, west}, std::pair{Side::north, north}}) {
    side_in_whole_[number(side)] = side_of(step);
    own_side_[number(side_of(step))] = side;
  }
}

Cell Frame::in_whole(Cell own) const {
  auto const at = own_->place(own);
  return whole_->cell({first_.x + at.x * east_.x + at.y * south_.x,
                       first_.y + at.x * east_.y + at.y * south_.y, first_.z + at.z});
}

body::Position Frame::in_whole(body::Position own) const {
  return {in_whole(own.feet), side_in_whole_[number(own.carried_to)], own.fallen};
}

Place Frame::own_place(Cell in_whole) const {
  auto const way = between(first_, whole_->place(in_whole));
  return {way.x * east_.x + way.y * east_.y, way.x * south_.x + way.y * south_.y, way.z};
}

bool Frame::holds(Cell in_whole) const { return own_->is_inside(own_place(in_whole)); }

Cell Frame::own(Cell in_whole) const { return own_->cell(own_place(in_whole)); }

Side Frame::own(Side in_whole) const { return own_side_[number(in_whole)]; }

body::Position Frame::own(body::Position in_whole) const {
  return {own(in_whole.feet), own(in_whole.carried_to), in_whole.fallen};
}

}  // namespace leat::works
