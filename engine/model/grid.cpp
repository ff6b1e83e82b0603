#include "engine/model/grid.hpp"

#include "engine/contract.hpp"

namespace leat::model {

namespace {
// One cell before the drawing is enough for a step west, north or down. Two are needed after it: a
// body two cells wide or tall at the last cell still asks for the cell one step further.
constexpr int rim_before = 1;
constexpr int rim_after = 2;
constexpr int rim = rim_before + rim_after;
}  // namespace

Grid::Grid(int width, int depth, int height) : width_(width), depth_(depth), height_(height) {
  require(width >= 1 && depth >= 1 && height >= 1, "Grid: every extent is at least one cell");
  auto const row = static_cast<std::size_t>(width) + rim;
  auto const layer = row * (static_cast<std::size_t>(depth) + rim);
  size_ = layer * (static_cast<std::size_t>(height) + rim);
  require(size_ < no_cell, "Grid: more cells than a cell id can name");
  layer_ = static_cast<Cell>(layer);
  auto const south = static_cast<Cell>(row);
  by_row_ = Divisor(south);
  by_layer_ = Divisor(layer_);
  step_ = {Cell{1}, south, static_cast<Cell>(-1), static_cast<Cell>(-south)};
}

std::size_t Grid::volume() const {
  return static_cast<std::size_t>(width_) * static_cast<std::size_t>(depth_) *
         static_cast<std::size_t>(height_);
}

Cell Grid::cell(Place at) const {
  require(at.x >= -rim_before && at.y >= -rim_before && at.z >= -rim_before &&
              at.x < width_ + rim_after && at.y < depth_ + rim_after && at.z < height_ + rim_after,
          "Grid::cell: the place lies beyond the rim");
  return static_cast<Cell>(at.z + rim_before) * layer_ +
         static_cast<Cell>(at.y + rim_before) * step_[1] + static_cast<Cell>(at.x + rim_before);
}

Place Grid::place(Cell c) const {
  return {static_cast<int>(by_row_.remainder(c)) - rim_before,
          static_cast<int>(by_row_.quotient(by_layer_.remainder(c))) - rim_before,
          static_cast<int>(by_layer_.quotient(c)) - rim_before};
}

bool Grid::is_inside(Place at) const {
  return at.x >= 0 && at.y >= 0 && at.z >= 0 && at.x < width_ && at.y < depth_ && at.z < height_;
}

}  // namespace leat::model
