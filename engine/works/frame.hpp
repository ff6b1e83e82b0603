#pragma once
#include <array>

#include "engine/body/position.hpp"
#include "engine/works/islands.hpp"

namespace leat::works {

// How a drawing lies in a larger one: its cells, sides and positions, told in the ids of either.
class Frame {
 public:
  // `where`: its corner and posture are read, seen from the larger drawing.
  Frame(Copy const& where, model::Grid const& own, model::Grid const& whole);

  model::Cell in_whole(model::Cell own) const;
  body::Position in_whole(body::Position own) const;
  // Whether the cell lies in the smaller drawing, and where. Contract of `own`: in it or its rim.
  bool holds(model::Cell in_whole) const;
  model::Cell own(model::Cell in_whole) const;
  body::Position own(body::Position in_whole) const;
  model::Side own(model::Side in_whole) const;

 private:
  using Sides = std::array<model::Side, model::sides.size() + 1>;
  model::Place own_place(model::Cell in_whole) const;

  model::Grid const* own_;
  model::Grid const* whole_;
  model::Place first_;         // of the smaller drawing's first cell
  model::Place east_, south_;  // one step in the smaller drawing
  Sides side_in_whole_, own_side_;
};

}  // namespace leat::works
