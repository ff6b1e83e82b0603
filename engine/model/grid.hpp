#pragma once
#include <array>
#include <compare>
#include <cstddef>
#include <cstdint>

#include "engine/contract.hpp"

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

// Division by a number known beforehand, as a multiplication: floor(n * m / 2^64) with
// m = floor((2^64 - 1) / d) + 1 is floor(n / d) for every n below 2^32 [Lemire, Kaser, Kurz: Faster
// remainder by direct computation, 2019, from memory]; a test tries it.
class Divisor {
 public:
  // Contract: by 2 at least.
  explicit Divisor(std::uint32_t by) : by_(by), factor_(~std::uint64_t{0} / by + 1) {}
  std::uint32_t quotient(std::uint32_t n) const {
    return static_cast<std::uint32_t>(high_half(factor_, n));
  }
  std::uint32_t remainder(std::uint32_t n) const { return n - quotient(n) * by_; }

 private:
  // The bits of a * b from the 64th on, b being short.
  static std::uint64_t high_half(std::uint64_t a, std::uint32_t b) {
    auto const low = (a & 0xffffffffu) * b;
    return ((a >> 32) * b + (low >> 32)) >> 32;
  }
  std::uint32_t by_;
  std::uint64_t factor_;
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
  Cell cell(Place at) const {
    require(is_near(at), "Grid::cell: the place lies beyond the rim");
    return static_cast<Cell>(at.z + rim_before) * layer_ +
           static_cast<Cell>(at.y + rim_before) * step_[1] + static_cast<Cell>(at.x + rim_before);
  }
  Place place(Cell c) const {
    return {static_cast<int>(by_row_.remainder(c)) - rim_before,
            static_cast<int>(by_row_.quotient(by_layer_.remainder(c))) - rim_before,
            static_cast<int>(by_layer_.quotient(c)) - rim_before};
  }
  bool is_inside(Place at) const {
    return at.x >= 0 && at.y >= 0 && at.z >= 0 && at.x < width_ && at.y < depth_ && at.z < height_;
  }
  bool is_inside(Cell c) const { return is_inside(place(c)); }

  // Neighbours; contract: `c` is inside, or the step stays within the rim.
  Cell above(Cell c) const { return c + layer_; }
  Cell below(Cell c) const { return c - layer_; }
  Cell beside(Cell c, Side side) const { return c + step_[static_cast<std::size_t>(side)]; }
  Cell raised(Cell c, int levels) const {
    return c + static_cast<Cell>(levels) * layer_;  // wraps for negative levels, as intended
  }

 private:
  // One cell before the drawing is enough for a step west, north or down. Two are needed after it:
  // a body two cells wide or tall at the last cell still asks for the cell one step further.
  static constexpr int rim_before = 1, rim_after = 2, rim = rim_before + rim_after;

  bool is_near(Place at) const {
    return at.x >= -rim_before && at.y >= -rim_before && at.z >= -rim_before &&
           at.x < width_ + rim_after && at.y < depth_ + rim_after && at.z < height_ + rim_after;
  }

  int width_, depth_, height_;
  Cell layer_;
  std::array<Cell, 4> step_;
  std::size_t size_;
  Divisor by_row_{2}, by_layer_{2};
};

}  // namespace leat::model
