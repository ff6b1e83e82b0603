#include "tests/laws/shrink.hpp"

#include <algorithm>
#include <sstream>

namespace leat::laws {

namespace {

using model::Cell;
using model::Design;
using model::Place;
using Fails = std::function<bool(Design const&)>;

// One round over all cells; whether any became simpler.
bool simplify_cells(Design& design, Fails const& fails) {
  bool is_simpler = false;
  for (Cell c = 0; c < design.grid.size(); ++c) {
    if (!design.grid.is_inside(c)) continue;
    for (model::FillId plain : {model::material::rock, model::material::open}) {
      auto const was = design.fill_of[c];
      if (was <= plain) break;
      design.fill_of[c] = plain;
      is_simpler = is_simpler || fails(design);
      if (fails(design)) break;
      design.fill_of[c] = was;
    }
  }
  return is_simpler;
}

// Without the plane of cells with that number on that axis: 0 x, 1 y, 2 z.
Design without(Design const& design, int axis, int number) {
  auto less = design;
  auto const& from = design.grid;
  less.grid = model::Grid(from.width() - (axis == 0), from.depth() - (axis == 1),
                          from.height() - (axis == 2));
  less.fill_of.assign(less.grid.size(), design.fill_of[0]);
  for (Cell c = 0; c < less.grid.size(); ++c) {
    if (!less.grid.is_inside(c)) continue;
    auto at = less.grid.place(c);
    int& coordinate = axis == 0 ? at.x : axis == 1 ? at.y : at.z;
    if (coordinate >= number) ++coordinate;
    less.fill_of[c] = design.fill_of[from.cell(at)];
  }
  return less;
}

bool drop_planes(Design& design, Fails const& fails) {
  bool is_smaller = false;
  for (int axis = 0; axis < 3; ++axis) {
    auto const extent = [&] {
      return axis == 0   ? design.grid.width()
             : axis == 1 ? design.grid.depth()
                         : design.grid.height();
    };
    for (int number = extent() - 1; number >= 0 && extent() > 1; --number) {
      auto less = without(design, axis, number);
      if (!fails(less)) continue;
      design = std::move(less);
      is_smaller = true;
    }
  }
  return is_smaller;
}

}  // namespace

Design shrunk(Design design, Fails const& fails) {
  design.inlets.clear();
  design.outlets.clear();
  design.plates.clear();
  for (bool is_done = false; !is_done;) {
    bool const is_smaller = drop_planes(design, fails);
    is_done = !simplify_cells(design, fails) && !is_smaller;
  }
  return design;
}

std::string drawn_in_numbers(Design const& design) {
  std::ostringstream text;
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    auto const& fill = design.fills[f];
    text << f << " = " << int{fill.powered} << '/' << int{fill.unpowered} << ", ";
  }
  text << (design.outside_is_open ? "outside open" : "outside rock");
  for (int z = 0; z < design.grid.height(); ++z) {
    text << "\nlevel " << z;
    for (int y = 0; y < design.grid.depth(); ++y) {
      text << "\n ";
      for (int x = 0; x < design.grid.width(); ++x) {
        text << ' ' << design.fill_of[design.grid.cell({x, y, z})];
      }
    }
  }
  return text.str();
}

}  // namespace leat::laws
