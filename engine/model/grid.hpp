#pragma once
#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>

// The drawing as numbered unit cubes. Axes (model section "The model"): x east, y south, z up,
// counted from 0. Around the drawing lies a rim of outside cells, so every cell inside has all its
// neighbours and no algorithm asks for edges. Cells are named by dense ids, rim included.
namespace leat::model {

using Cell = std::uint32_t;
inline constexpr Cell no_cell = 0xffffffffu;

// Coordinates in cells. Inside the drawing: 0 <= x < width, 0 <= y < depth, 0 <= z < height.
struct Place {
  int x = 0, y = 0, z = 0;
  auto operator<=>(Place const&) const = default;
};

enum class Side : std::uint8_t { east, south, west, north, none };
inline constexpr std::array sides{Side::east, Side::south, Side::west, Side::north};

class Grid {
 public:
  Grid() : Grid(1, 1, 1) {}
  // Extents in cells, each at least 1; contract: the cells with their rim fit a Cell.
  Grid(int width, int depth, int height);

  int width() const { return width_; }
  int depth() const { return depth_; }
  int height() const { return height_; }
  // Number of cell ids, rim included: the length of every per-cell vector.
  std::size_t size() const { return size_; }
  // Number of cells inside the drawing.
  std::size_t volume() const;

  // The place may lie in the rim: one cell before the drawing, two after it, on each axis.
  Cell cell(Place) const;
  Place place(Cell) const;
  bool is_inside(Place) const;
  bool is_inside(Cell c) const { return is_inside(place(c)); }

  // Neighbours; contract: `c` is inside, or the step stays within the rim.
  Cell above(Cell c) const { return c + layer_; }
  Cell below(Cell c) const { return c - layer_; }
  Cell beside(Cell c, Side side) const { return c + step_[static_cast<std::size_t>(side)]; }
  Cell raised(Cell c, int levels) const {
    return c + static_cast<Cell>(levels) * layer_;  // wraps for negative levels, as intended
  }

 private:
  int width_, depth_, height_;
  Cell layer_;
  std::array<Cell, 4> step_;
  std::size_t size_;
};

}  // namespace leat::model
