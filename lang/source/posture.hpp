#pragma once
#include <algorithm>

#include "engine/model/grid.hpp"

namespace leat::source {

// How a drawing is put down: mirrored or not (west and east change places), then turned to the
// left, counter-clockwise seen from above, by so many quarters.
struct Posture {
  bool is_mirrored = false;
  int quarters = 0;
  bool is_across() const { return quarters % 2 == 1; }
};

// First `inner`, then `outer`. A mirror turns the other way round what was turned before it.
inline Posture combined(Posture outer, Posture inner) {
  auto const turned = outer.is_mirrored ? 4 - inner.quarters : inner.quarters;
  return {outer.is_mirrored != inner.is_mirrored, (outer.quarters + turned) % 4};
}

// A drawing of some extent that stands in a larger one, with its corner (west, north, lowest) at a
// place of it.
struct Standing {
  Posture posture;
  model::Place corner;
  int width = 0, depth = 0, height = 0;  // of the drawing, before it is turned

  int across() const { return posture.is_across() ? depth : width; }
  int along() const { return posture.is_across() ? width : depth; }

  // Where a cell of the drawing comes to stand.
  model::Place outside(model::Place own) const {
    auto x = posture.is_mirrored ? width - 1 - own.x : own.x, y = own.y;
    auto wide = width, deep = depth;
    for (int i = 0; i < posture.quarters; ++i) {
      auto const turned = wide - 1 - x;
      x = y;
      y = turned;
      std::swap(wide, deep);
    }
    return {corner.x + x, corner.y + y, corner.z + own.z};
  }
  // How far apart neighbours from west to east in the drawing come to stand.
  model::Place eastward() const {
    auto const here = outside({0, 0, 0}), next = outside({1, 0, 0});
    return {next.x - here.x, next.y - here.y, 0};
  }
  bool covers(model::Place at) const {
    return at.x >= corner.x && at.y >= corner.y && at.z >= corner.z && at.x < corner.x + across() &&
           at.y < corner.y + along() && at.z < corner.z + height;
  }
  // Which cell of the drawing stands there. Contract: covers(at).
  model::Place inside(model::Place at) const {
    auto x = at.x - corner.x, y = at.y - corner.y;
    auto wide = across(), deep = along();
    for (int i = 0; i < posture.quarters; ++i) {
      auto const turned = x;
      x = deep - 1 - y;
      y = turned;
      std::swap(wide, deep);
    }
    return {posture.is_mirrored ? width - 1 - x : x, y, at.z - corner.z};
  }
};

}  // namespace leat::source
