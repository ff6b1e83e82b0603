#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "lang/render/columns.hpp"
#include "lang/render/picture/markup.hpp"
#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/symbols.hpp"

namespace leat::render {

namespace {

struct Box {
  int left = 0, top = 0, right = 0, bottom = 0;
  bool meets(Box const& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
};

// Names are set where they cover neither each other nor cells of ports: above their cell, below,
// to the right or to the left, whichever is free first; at last above, cut to the cells beside.
class Names {
 public:
  explicit Names(Plane const& plane) : plane_(plane) {}

  void keep_free(Plane::Spot spot) {
    taken_.push_back({spot.across * cell_size, spot.down * cell_size, (spot.across + 1) * cell_size,
                      (spot.down + 1) * cell_size});
  }

  std::string set(Plane::Spot spot, std::string const& name) {
    constexpr std::size_t most_columns = 24;
    for (std::size_t columns : {most_columns, std::size_t{10}, std::size_t{5}}) {
      auto const shown = shortened(showable(name), columns);
      for (auto const& box : around(spot, shown)) {
        if (std::any_of(taken_.begin(), taken_.end(), [&](Box const& b) { return b.meets(box); }))
          continue;
        taken_.push_back(box);
        return text(box, shown, name);
      }
      if (columns_of(shown) < columns) columns = columns_of(shown);
    }
    return text(around(spot, shortened(showable(name), 5)).front(), shortened(showable(name), 5),
                name);
  }

 private:
  static constexpr int high = 14;

  std::array<Box, 4> around(Plane::Spot spot, std::string const& shown) const {
    auto const width = static_cast<int>(columns_of(shown)) * 8;
    auto const x = spot.across * cell_size, y = spot.down * cell_size;
    auto const left = std::clamp(x + (cell_size - width) / 2, -margins_left,
                                 std::max(-margins_left, plane_.width() * cell_size + 10 - width));
    return {{{left, y - high - 2, left + width, y - 2},
             {left, y + cell_size + 4, left + width, y + cell_size + 4 + high},
             {x + cell_size + 5, y + 13, x + cell_size + 5 + width, y + 13 + high},
             {x - 5 - width, y + 13, x - 5, y + 13 + high}}};
  }

  static std::string text(Box const& box, std::string const& shown, std::string const& name) {
    auto const title =
        shown == name ? std::string() : fmt::format("<title>{}</title>", escaped(name));
    return fmt::format(
        "<text class=\"name mid cased f-ink s-paper\" x=\"{}\" y=\"{}\">{}{}</text>\n",
        (box.left + box.right) / 2, box.bottom - 3, title, escaped(shown));
  }

  static constexpr int margins_left = 6;
  Plane const& plane_;
  std::vector<Box> taken_;
};

// Where a port's name stands: at its first cell in the cut, if no lower level has cells of it.
std::optional<Plane::Spot> spot_of(model::Grid const& grid, Plane const& plane,
                                   model::Port const& port) {
  if (port.cells.empty()) return std::nullopt;
  if (plane.is_level()) {
    auto const lowest = grid.place(port.cells.front());
    return lowest.z == plane.cut().at ? plane.spot(lowest) : std::nullopt;
  }
  for (auto c : port.cells) {
    if (auto const spot = plane.spot(grid.place(c))) return spot;
  }
  return std::nullopt;
}

}  // namespace

std::string port_names(PictureScene const& scene, Plane const& plane) {
  auto const& design = scene.subject.design;
  Names names(plane);
  for (auto const* ports : {&design.inlets, &design.outlets}) {
    for (auto const& port : *ports) {
      for (auto c : port.cells) {
        if (auto const spot = plane.spot(design.grid.place(c))) names.keep_free(*spot);
      }
    }
  }
  std::string text;
  auto const set = [&](std::vector<model::Port> const& ports,
                       std::vector<source::Named> const& named) {
    for (std::size_t p = 0; p < ports.size(); ++p) {
      if (auto const spot = spot_of(design.grid, plane, ports[p]))
        text += names.set(*spot, named[p].name);
    }
  };
  set(design.inlets, scene.subject.map.inlets);
  set(design.outlets, scene.subject.map.outlets);
  return text;
}

}  // namespace leat::render
