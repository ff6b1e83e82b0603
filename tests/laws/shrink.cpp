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

int& coordinate(Place& at, int axis) { return axis == 0 ? at.x : axis == 1 ? at.y : at.z; }

// Moves the cells of ports to the grid that lost a plane; ports that lose all cells go.
void move_ports(std::vector<model::Port>& ports, model::Grid const& from, model::Grid const& to,
                int axis, int number) {
  for (auto& port : ports) {
    std::vector<Cell> kept;
    for (auto c : port.cells) {
      auto at = from.place(c);
      auto& where = coordinate(at, axis);
      if (where == number) continue;
      if (where > number) --where;
      kept.push_back(to.cell(at));
    }
    port.cells = std::move(kept);
  }
  std::erase_if(ports, [](model::Port const& port) { return port.cells.empty(); });
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
    if (auto& where = coordinate(at, axis); where >= number) ++where;
    less.fill_of[c] = design.fill_of[from.cell(at)];
  }
  move_ports(less.inlets, from, less.grid, axis, number);
  move_ports(less.outlets, from, less.grid, axis, number);
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

// Takes one after the other out of a list, as long as the rest fails.
template <class Part>
bool drop_parts(Design& design, std::vector<Part> Design::*parts, Fails const& fails) {
  bool is_smaller = false;
  for (auto i = (design.*parts).size(); i-- > 0;) {
    auto less = design;
    (less.*parts).erase((less.*parts).begin() + static_cast<std::ptrdiff_t>(i));
    if (!fails(less)) continue;
    design = std::move(less);
    is_smaller = true;
  }
  return is_smaller;
}

// Takes fills from their controls: for good what they are with or without power.
bool drop_controls(Design& design, Fails const& fails) {
  bool is_simpler = false;
  for (auto& fill : design.fills) {
    if (!fill.control) continue;
    auto const was = fill;
    for (auto material : {was.unpowered, was.powered}) {
      fill = {material, material, {}};
      if (fails(design)) break;
      fill = was;
    }
    is_simpler = is_simpler || !fill.control;
  }
  return is_simpler;
}

Design simplest(Design design, Fails const& fails) {
  for (bool is_done = false; !is_done;) {
    bool const is_smaller = drop_planes(design, fails);
    is_done = !simplify_cells(design, fails) && !is_smaller;
  }
  return design;
}

std::string cells_in_numbers(std::vector<model::Port> const& ports, model::Grid const& grid) {
  std::ostringstream text;
  for (auto const& port : ports) {
    text << " (";
    for (auto c : port.cells) {
      auto const at = grid.place(c);
      text << ' ' << at.x << ',' << at.y << ',' << at.z;
    }
    text << " )";
  }
  return text.str();
}

}  // namespace

Design shrunk(Design design, Fails const& fails) {
  design.inlets.clear();
  design.outlets.clear();
  design.plates.clear();
  return simplest(std::move(design), fails);
}

Design shrunk_with_ports(Design design, Fails const& fails) {
  for (bool is_smaller = true; is_smaller;) {
    is_smaller = drop_parts(design, &Design::inlets, fails);
    is_smaller |= drop_parts(design, &Design::outlets, fails);
    is_smaller |= drop_parts(design, &Design::profiles, fails);
    is_smaller |= drop_controls(design, fails);
  }
  return simplest(std::move(design), fails);
}

std::string drawn_in_numbers(Design const& design) {
  std::ostringstream text;
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    auto const& fill = design.fills[f];
    text << f << " = " << int{fill.powered} << '/' << int{fill.unpowered} << ", ";
  }
  text << (design.outside_is_open ? "outside open" : "outside rock");
  text << "\ninlets" << cells_in_numbers(design.inlets, design.grid);
  text << "\noutlets" << cells_in_numbers(design.outlets, design.grid);
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
