#pragma once
#include <cstdint>
#include <vector>

#include "engine/water/field.hpp"

namespace leat::water {

// D(x) of model section 2: side steps from `c` to the nearest cell with a hole below it, through
// cells that water may enter and that hold no source; no_hole past Rule::hole_search. Contract:
// water may enter `c`, and it holds no source.
inline constexpr int no_hole = 255;
int hole_distance(Moment const&, Cell c);

// A hole below: water may enter the cell under `c`. Every cell outside an open drawing has one.
bool has_hole_below(Moment const&, Cell c);

// D of every cell at once, kept up to date while sources form.
//
// Idea: paths that lead to a hole lead back from it, so one breadth-first search from all cells
// with a hole below gives D everywhere. A source that forms closes its cell to such paths, which
// can only matter to cells within Rule::hole_search steps of it, and of these only to those with a
// shortest way that may lead through it, as long as the way to it and on: they are searched again
// one by one. Cost: one visit a cell at first; at most about 40 short searches for each formed
// source, none where no hole is near.
class HoleDistances {
 public:
  explicit HoleDistances(Moment const& start);
  int operator[](Cell c) const { return distance_[c]; }
  // `now` is the field in which `c` has just become a source.
  void source_formed(Moment const& now, Cell c);

 private:
  std::vector<std::uint8_t> distance_;
};

}  // namespace leat::water
