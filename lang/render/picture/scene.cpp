#include "lang/render/picture/scene.hpp"

#include <fmt/format.h>

#include "engine/contract.hpp"

namespace leat::render {

namespace {

int sign(int n) { return n > 0 ? 1 : n < 0 ? -1 : 0; }

}  // namespace

Plane::Plane(model::Grid const& grid, Cut cut) : cut_(cut), top_(grid.height() - 1) {
  int const most = cut.kind == Cut::Kind::level ? grid.height()
                   : cut.kind == Cut::Kind::row ? grid.depth()
                                                : grid.width();
  require(cut.at >= 0 && cut.at < most, "the cut lies in the drawing");
  width_ = cut.kind == Cut::Kind::column ? grid.depth() : grid.width();
  height_ = cut.kind == Cut::Kind::level ? grid.depth() : grid.height();
}

model::Place Plane::place(int across, int down) const {
  switch (cut_.kind) {
    case Cut::Kind::level:
      return {across, down, cut_.at};
    case Cut::Kind::row:
      return {across, cut_.at, top_ - down};
    case Cut::Kind::column:
      break;
  }
  return {cut_.at, across, top_ - down};
}

std::optional<Plane::Spot> Plane::spot(model::Place at) const {
  Spot const spot = cut_.kind == Cut::Kind::level ? Spot{at.x, at.y}
                    : cut_.kind == Cut::Kind::row ? Spot{at.x, top_ - at.z}
                                                  : Spot{at.y, top_ - at.z};
  if (spot.across < 0 || spot.across >= width_ || spot.down < 0 || spot.down >= height_)
    return std::nullopt;
  if (place(spot.across, spot.down) != at) return std::nullopt;
  return spot;
}

int Plane::down_number(int down) const { return is_level() ? down : top_ - down; }

Plane::Drift Plane::drift(water::Current current) const {
  auto const x = sign(current.x), y = sign(current.y);
  if (cut_.kind == Cut::Kind::level) return {x, y, 0};
  if (cut_.kind == Cut::Kind::row) return {x, 0, y};
  return {y, 0, -x};
}

std::string cut_words(Cut cut) {
  switch (cut.kind) {
    case Cut::Kind::level:
      return fmt::format("level {}", cut.at);
    case Cut::Kind::row:
      return fmt::format("row {}, seen from the south", cut.at);
    case Cut::Kind::column:
      break;
  }
  return fmt::format("column {}, seen from the west", cut.at);
}

}  // namespace leat::render
