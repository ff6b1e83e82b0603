#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>

#include "engine/building/needs.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/markup.hpp"
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

// Names are set where they cover no other name and no cell of a port, and as few cells as possible
// that something is to be seen in: above their cell, below it, to the right or to the left. Where
// there is no room, they are cut shorter.
class Names {
 public:
  Names(PictureScene const& scene, Plane const& plane) : scene_(scene), plane_(plane) {}

  void keep_free(Plane::Spot spot) {
    taken_.push_back({spot.across * cell_size, spot.down * cell_size, (spot.across + 1) * cell_size,
                      (spot.down + 1) * cell_size});
  }

  std::string set(Plane::Spot spot, std::string const& name) {
    for (std::size_t columns : {24u, 12u, 6u}) {
      auto const shown = shortened(showable(name), columns);
      if (auto const box = best(spot, shown)) {
        taken_.push_back(*box);
        return text(*box, shown, name);
      }
    }
    auto const shown = shortened(showable(name), 6);
    return text(around(spot, shown).front(), shown, name);
  }

 private:
  static constexpr int high = 16, room_left = 4, room_right = 12, room_above = 18, room_below = 22;

  std::array<Box, 4> around(Plane::Spot spot, std::string const& shown) const {
    auto const width = static_cast<int>(columns_of(shown)) * 8 + 6;
    auto const x = spot.across * cell_size, y = spot.down * cell_size;
    auto const most = plane_.width() * cell_size + room_right - width;
    auto const left = std::max(-room_left, std::min(x + (cell_size - width) / 2, most));
    auto const middle = y + (cell_size - high) / 2;
    return {{{left, y - high - 2, left + width, y - 2},
             {left, y + cell_size + 3, left + width, y + cell_size + 3 + high},
             {x + cell_size + 3, middle, x + cell_size + 3 + width, middle + high},
             {x - 3 - width, middle, x - 3, middle + high}}};
  }

  bool is_on_sheet(Box const& box) const {
    return box.left >= -room_left && box.right <= plane_.width() * cell_size + room_right &&
           box.top >= -room_above && box.bottom <= plane_.height() * cell_size + room_below;
  }

  // What a name there hides: solid cells count one, others four.
  int hidden_by(Box const& box) const {
    auto const& design = scene_.subject.design;
    auto const first = [](int at) { return std::max(0, at / cell_size); };
    int count = 0;
    for (int down = first(box.top); down * cell_size < box.bottom && down < plane_.height(); ++down)
      for (int across = first(box.left); across * cell_size < box.right && across < plane_.width();
           ++across) {
        auto const c = design.grid.cell(plane_.place(across, down));
        if (box.bottom > 0) count += building::is_ever_solid(design, design.fill_of[c]) ? 1 : 4;
      }
    return count;
  }

  std::optional<Box> best(Plane::Spot spot, std::string const& shown) const {
    std::optional<Box> found;
    int least = 0;
    for (auto const& box : around(spot, shown)) {
      bool const is_free = std::none_of(taken_.begin(), taken_.end(),
                                        [&](Box const& taken) { return taken.meets(box); });
      if (!is_free || !is_on_sheet(box)) continue;
      auto const count = hidden_by(box);
      if (found && count >= least) continue;
      found = box;
      least = count;
    }
    return found;
  }

  static std::string text(Box const& box, std::string const& shown, std::string const& name) {
    auto const title =
        shown == name ? std::string() : fmt::format("<title>{}</title>", escaped(name));
    return fmt::format(
        "<g>{}<rect class=\"f-paper\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"4\"/>"
        "<text class=\"name mid f-ink\" x=\"{}\" y=\"{}\">{}</text></g>\n",
        title, box.left, box.top, box.right - box.left, high, (box.left + box.right) / 2,
        box.bottom - 4, escaped(shown));
  }

  PictureScene const& scene_;
  Plane const& plane_;
  std::vector<Box> taken_;
};

// Where a port's name stands: at its first cell in the cut, if no lower level has cells of it.
std::optional<Plane::Spot> spot_of(model::Grid const& grid, Plane const& plane,
                                   model::Port const& port) {
  if (port.cells.empty()) return std::nullopt;
  auto const lowest = grid.place(port.cells.front()).z;
  for (auto c : port.cells) {
    auto const at = grid.place(c);
    if (plane.is_level() && at.z != lowest) break;
    if (auto const spot = plane.spot(at)) return spot;
  }
  return std::nullopt;
}

}  // namespace

std::string port_names(PictureScene const& scene, Plane const& plane) {
  auto const& design = scene.subject.design;
  Names names(scene, plane);
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
