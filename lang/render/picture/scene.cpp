#include "lang/render/picture/scene.hpp"

#include <fmt/format.h>

#include <utility>

#include "engine/contract.hpp"

namespace leat::render {

namespace {

int sign(int n) { return n > 0 ? 1 : n < 0 ? -1 : 0; }

}  // namespace

Box whole_box(model::Grid const& grid) {
  return {{0, 0, 0}, {grid.width() - 1, grid.depth() - 1, grid.height() - 1}};
}

Plane::Plane(model::Grid const& grid, Cut cut)
    : cut_(std::move(cut)), box_(cut_.box.value_or(whole_box(grid))) {
  auto const [x, y, z] = box_.least;
  auto const [x_last, y_last, z_last] = box_.most;
  require(grid.is_inside(box_.least) && grid.is_inside(box_.most) && x <= x_last && y <= y_last &&
              z <= z_last,
          "the box lies in the drawing");
  bool const is_column = cut_.kind == Cut::Kind::column;
  auto const first = is_level() ? z : is_column ? x : y;
  auto const last = is_level() ? z_last : is_column ? x_last : y_last;
  require(cut_.at >= first && cut_.at <= last, "the cut lies in its box");
  width_ = (is_column ? y_last - y : x_last - x) + 1;
  height_ = (is_level() ? y_last - y : z_last - z) + 1;
}

model::Place Plane::place(int across, int down) const {
  switch (cut_.kind) {
    case Cut::Kind::level:
      return {box_.least.x + across, box_.least.y + down, cut_.at};
    case Cut::Kind::row:
      return {box_.least.x + across, cut_.at, box_.most.z - down};
    case Cut::Kind::column:
      break;
  }
  return {cut_.at, box_.least.y + across, box_.most.z - down};
}

std::optional<Plane::Spot> Plane::spot(model::Place at) const {
  auto const [x, y, z] = box_.least;
  auto const across = cut_.kind == Cut::Kind::column ? at.y - y : at.x - x;
  Spot const spot{across, is_level() ? at.y - y : box_.most.z - at.z};
  if (spot.across < 0 || spot.across >= width_ || spot.down < 0 || spot.down >= height_)
    return std::nullopt;
  if (place(spot.across, spot.down) != at) return std::nullopt;
  return spot;
}

int Plane::across_number(int across) const {
  return across + (cut_.kind == Cut::Kind::column ? box_.least.y : box_.least.x);
}

int Plane::down_number(int down) const {
  return is_level() ? box_.least.y + down : box_.most.z - down;
}

Plane::Drift Plane::drift(water::Current current) const {
  auto const x = sign(current.x), y = sign(current.y);
  if (cut_.kind == Cut::Kind::level) return {x, y, 0};
  if (cut_.kind == Cut::Kind::row) return {x, 0, y};
  return {y, 0, -x};
}

std::string cut_words(Cut const& cut) {
  auto const part = cut.box ? " (part)" : "";
  switch (cut.kind) {
    case Cut::Kind::level:
      return fmt::format("level {}{}", cut.at, part);
    case Cut::Kind::row:
      return fmt::format("row {}{}, seen from the south", cut.at, part);
    case Cut::Kind::column:
      break;
  }
  return fmt::format("column {}{}, seen from the west", cut.at, part);
}

}  // namespace leat::render
