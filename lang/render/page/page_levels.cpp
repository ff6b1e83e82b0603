#include <fmt/format.h>

#include <map>
#include <set>

#include "engine/building/needs.hpp"
#include "lang/render/fill_words.hpp"
#include "lang/render/markup.hpp"
#include "lang/render/page/page_pieces.hpp"
#include "lang/render/picture/level_svg.hpp"
#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/symbols.hpp"
#include "lang/render/water_signs.hpp"
#include "lang/render/words.hpp"

// The levels of a page. A page must stay small, so what never changes is drawn in few strokes, and
// of what the script changes each cell has no more than the signs it shows.
namespace leat::render {

namespace {

using model::Place;

// Puts signs at their places.
struct Stamp {
  std::string_view prefix;
  std::string operator()(std::string_view id, Place at) const {
    if (id.empty()) return {};
    return fmt::format("<use href=\"#{}{}\" x=\"{}\" y=\"{}\"/>", prefix, id, at.x * cell_size,
                       at.y * cell_size);
  }
};

template <class Visit>
void each_cell(model::Grid const& grid, int z, Visit visit) {
  for (int y = 0; y < grid.depth(); ++y) {
    for (int x = 0; x < grid.width(); ++x) visit(Place{x, y, z}, grid.cell({x, y, z}));
  }
}

// Rows of rock as one outline each.
std::string rock_path(model::Design const& design, int z) {
  std::string path;
  auto const& grid = design.grid;
  auto const is_rock = [&](int x, int y) {
    auto const fill = design.fill_of[grid.cell({x, y, z})];
    return building::is_ever_solid(design, fill) &&
           design.fills[fill].powered == model::material::rock;
  };
  for (int y = 0; y < grid.depth(); ++y) {
    for (int x = 0; x < grid.width(); ++x) {
      if (!is_rock(x, y)) continue;
      int const first = x;
      while (x + 1 < grid.width() && is_rock(x + 1, y)) ++x;
      path += fmt::format("M{} {}h{}v{}H{}z", first * cell_size, y * cell_size,
                          (x + 1 - first) * cell_size, cell_size, first * cell_size);
    }
  }
  return path;
}

std::string grid_path(model::Grid const& grid) {
  std::string path;
  for (int x = 1; x < grid.width(); ++x)
    path += fmt::format("M{} 0V{}", x * cell_size, grid.depth() * cell_size);
  for (int y = 1; y < grid.depth(); ++y)
    path += fmt::format("M0 {}H{}", y * cell_size, grid.width() * cell_size);
  return path;
}

std::string ground(model::Design const& design, int z) {
  auto const& grid = design.grid;
  auto const rock = rock_path(design, z);
  auto text = fmt::format(
      "<rect class=\"f-paper\" width=\"{}\" height=\"{}\"/><path class=\"line s-grid\" d=\"{}\"/>",
      grid.width() * cell_size, grid.depth() * cell_size, grid_path(grid));
  if (!rock.empty())
    text += fmt::format("<path class=\"f-rock\" d=\"{0}\"/><path fill=\"url(#hatch)\" d=\"{0}\"/>",
                        rock);
  return text;
}

std::string water_signs(Stamp use, model::Design const& design,
                        std::map<std::uint32_t, playback::Look> const& looks, int z) {
  std::string text;
  Plane const plane(design.grid, {});
  each_cell(design.grid, z, [&](Place at, model::Cell c) {
    auto const found = looks.find(playback::number_of(design.grid, c));
    if (found == looks.end() || found->second.state == water::dry) return;
    auto const wet = wet_cell(found->second, design.practice);
    text += use(water_symbol(wet, plane), at) + use(current_symbol(wet, plane), at);
  });
  return text;
}

std::string fittings(Stamp use, model::Design const& design, int z) {
  std::string text;
  each_cell(design.grid, z, [&](Place at, model::Cell c) {
    auto const& fill = design.fills[design.fill_of[c]];
    if (!fill.is_switched() && fill.powered != model::material::rock)
      text += use(material_symbol(fill.powered), at);
  });
  return text;
}

std::string switched(Stamp use, model::Design const& design, explore::Setting const& setting,
                     int z) {
  std::string text;
  each_cell(design.grid, z, [&](Place at, model::Cell c) {
    auto const id = design.fill_of[c];
    auto const& fill = design.fills[id];
    if (!fill.is_switched()) return;
    text += use(material_symbol(setting[id] ? fill.powered : fill.unpowered), at) +
            use(setting[id] ? "k-on" : "k-off", at);
  });
  return text;
}

std::string ports(Stamp use, model::Design const& design, int z) {
  std::string text;
  auto const put = [&](std::vector<model::Port> const& list, std::string_view sign) {
    for (auto const& port : list) {
      for (auto c : port.cells) {
        auto const at = design.grid.place(c);
        if (at.z == z) text += use(sign, at);
      }
    }
  };
  put(design.inlets, "inlet");
  put(design.outlets, "outlet");
  return text;
}

// The water as built: what the filling has come to.
std::map<std::uint32_t, playback::Look> filled(playback::Playback const& playback) {
  std::map<std::uint32_t, playback::Look> looks;
  for (auto patch : playback.runs[playback.filling]) {
    for (auto const& change : playback.patches[patch]) looks[change.at] = playback.looks[change.to];
  }
  return looks;
}

// Frames around the cells that the other revision draws in another way.
std::string differing(PagePart const& part, int z) {
  std::string text;
  for (auto c : part.differing) {
    auto const at = part.subject.design.grid.place(c);
    if (at.z == z)
      text += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>",
                          at.x * cell_size + 1, at.y * cell_size + 1, cell_size - 2, cell_size - 2);
  }
  return text.empty() ? text : fmt::format("<g class=\"differs\">{}</g>", text);
}

// Pictures are drawn at 40 to a cell and shown at 28.
int shown_size(int drawn) { return drawn * 7 / 10; }

std::string level(PagePart const& part, std::map<std::uint32_t, playback::Look> const& looks,
                  int z) {
  auto const& design = part.subject.design;
  auto const& setting = part.playback.pools.front().setting;
  model::Arrangement const arrangement(design, setting);
  PictureScene const scene{part.subject, &arrangement, {}, {}, {}, {}};
  Stamp const use{sign_prefix(part)};
  Cut const cut{Cut::Kind::level, z};
  Plane const plane(design.grid, cut);
  auto const extent = extent_of(scene, cut);
  return fmt::format(
      "<figure class=\"level\"><figcaption>level {0}</figcaption>"
      "<svg class=\"picture\" data-level=\"{0}\" viewBox=\"{1} {2} {3} {4}\" width=\"{5}\" "
      "height=\"{6}\" role=\"img\" aria-label=\"level {0} with its water\">"
      "<g>{7}</g><g class=\"water\">{8}</g><g>{9}</g><g class=\"switched\">{10}</g><g>{11}</g>"
      "</svg></figure>\n",
      z, -margins.left, -margins.top, extent.width, extent.height, shown_size(extent.width),
      shown_size(extent.height), ground(design, z), water_signs(use, design, looks, z),
      fittings(use, design, z), switched(use, design, setting, z),
      ports(use, design, z) + wall_lines(design, plane) + rulers(plane) + port_names(scene, plane) +
          differing(part, z));
}

}  // namespace

std::string levels_markup(PagePart const& part, std::size_t number) {
  auto const& grid = part.subject.design.grid;
  if (part.playback.detail == playback::Detail::nothing) return {};
  auto const looks = filled(part.playback);
  std::string text = fmt::format("<div class=\"levels\" id=\"levels-{}\">\n", number);
  for (int z = grid.height() - 1; z >= 0; --z) text += level(part, looks, z);
  return text + "</div>\n";
}

std::string legend_markup(PagePart const& part) {
  auto const& design = part.subject.design;
  std::set<model::FillId> fills;
  for (int z = 0; z < design.grid.height(); ++z)
    each_cell(design.grid, z, [&](Place, model::Cell c) { fills.insert(design.fill_of[c]); });
  auto const ports = port_cells(design);
  std::string text = "<dl class=\"marks\">";
  for (auto id : fills)
    text +=
        fmt::format("<div><dt>{}</dt><dd>{}</dd></div>", escaped(part.subject.map.fills[id].name),
                    escaped(mark_words(part.subject, id, ports)));
  return text + "</dl>\n";
}

}  // namespace leat::render
