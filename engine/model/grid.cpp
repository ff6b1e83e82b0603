#include "engine/model/grid.hpp"

namespace leat::model {

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

}  // namespace leat::model
