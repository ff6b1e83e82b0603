#include "lang/render/picture/level_svg.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "engine/building/needs.hpp"
#include "lang/render/fill_words.hpp"
#include "lang/render/markup.hpp"
#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/symbols.hpp"
#include "lang/render/water_signs.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

water::WetCell const* wet_cell(PictureScene const& scene, model::Cell c) {
  auto const found =
      std::lower_bound(scene.wet.begin(), scene.wet.end(), c,
                       [](water::WetCell const& wet, model::Cell cell) { return wet.cell < cell; });
  return found != scene.wet.end() && found->cell == c ? &*found : nullptr;
}

std::string use(std::string_view what, std::string_view id) {
  return id.empty() ? std::string() : fmt::format("<use class=\"{}\" href=\"#{}\"/>", what, id);
}

bool is_port(std::vector<model::Port> const& ports, model::Cell c) {
  return std::any_of(ports.begin(), ports.end(), [&](model::Port const& port) {
    return std::binary_search(port.cells.begin(), port.cells.end(), c);
  });
}

std::string switch_symbol(PictureScene const& scene, model::Cell c) {
  auto const& design = scene.subject.design;
  auto const& fill = design.fills[design.fill_of[c]];
  if (!fill.is_switched()) return {};
  return scene.arrangement->material_of(c) == fill.powered ? "k-on" : "k-off";
}

std::string cell_group(PictureScene const& scene, Plane const& plane, Plane::Spot spot) {
  auto const& design = scene.subject.design;
  auto const at = plane.place(spot.across, spot.down);
  auto const c = design.grid.cell(at);
  auto const* wet = wet_cell(scene, c);
  constexpr std::string_view prefixes = "crs";
  auto text = fmt::format(
      "<g id=\"{0}{1}-{2}-{3}\" class=\"cell\" data-cell=\"{1} {2} {3}\" transform=\"translate({4} "
      "{5})\"><title>{6}</title>",
      prefixes[static_cast<std::size_t>(plane.cut().kind)], at.x, at.y, at.z,
      spot.across * cell_size, spot.down * cell_size, escaped(cell_words(scene, c)));
  text += use("ground", wet != nullptr ? water_symbol(*wet, plane) : "dry");
  text += use("stuff", material_symbol(scene.arrangement->material_of(c)));
  if (wet != nullptr) text += use("current", current_symbol(*wet, plane));
  text += use("switch", switch_symbol(scene, c));
  if (is_port(design.inlets, c)) text += use("port", "inlet");
  if (is_port(design.outlets, c)) text += use("port", "outlet");
  return text + "</g>\n";
}

// A stretch of one row, of one solid material.
std::string solid_stretch(PictureScene const& scene, Plane const& plane, Plane::Spot begin,
                          int length) {
  auto const c = scene.subject.design.grid.cell(plane.place(begin.across, begin.down));
  auto const material = scene.arrangement->material_of(c);
  auto const box =
      fmt::format("x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"", begin.across * cell_size,
                  begin.down * cell_size, length * cell_size, cell_size);
  return fmt::format(
      "<g><title>{}</title><rect class=\"f-rock\" {}/><rect fill=\"url(#{})\" {}/></g>\n",
      escaped(scene.subject.map.materials[material].name), box,
      material == model::material::rock ? "hatch" : "cross", box);
}

std::string cells(PictureScene const& scene, Plane const& plane) {
  std::string text;
  auto const& design = scene.subject.design;
  auto const fill_at = [&](int across, int down) {
    return design.fill_of[design.grid.cell(plane.place(across, down))];
  };
  for (int down = 0; down < plane.height(); ++down) {
    for (int across = 0; across < plane.width();) {
      auto const fill = fill_at(across, down);
      auto end = across + 1;
      if (!building::is_ever_solid(design, fill)) {
        text += cell_group(scene, plane, {across, down});
      } else {
        while (end < plane.width() && fill_at(end, down) == fill) ++end;
        text += solid_stretch(scene, plane, {across, down}, end - across);
      }
      across = end;
    }
  }
  return text;
}

std::string port_words(Subject const& subject, model::Cell c) {
  std::string text;
  auto const add = [&](std::vector<model::Port> const& ports,
                       std::vector<source::Named> const& names, std::string_view kind) {
    for (std::size_t p = 0; p < ports.size(); ++p) {
      if (std::binary_search(ports[p].cells.begin(), ports[p].cells.end(), c))
        text += fmt::format(", {} {}", kind, names[p].name);
    }
  };
  add(subject.design.inlets, subject.map.inlets, "inlet");
  add(subject.design.outlets, subject.map.outlets, "outlet");
  return text;
}

}  // namespace

std::string wall_lines(model::Design const& design, Plane const& plane) {
  auto const is_solid_in = [&](int across, int down) {
    auto const at = plane.place(across, down);
    if (!design.grid.is_inside(at)) return !design.outside_is_open;
    return building::is_ever_solid(design, design.fill_of[design.grid.cell(at)]);
  };
  std::string path;
  auto const trace = [&](int lines, int length, bool is_along) {
    for (int line = 0; line <= lines; ++line) {
      for (int at = 0; at < length;) {
        auto const is_edge = [&](int i) {
          return is_along ? is_solid_in(i, line - 1) != is_solid_in(i, line)
                          : is_solid_in(line - 1, i) != is_solid_in(line, i);
        };
        auto const begin = at;
        while (at < length && is_edge(at)) ++at;
        if (at > begin)
          path +=
              is_along
                  ? fmt::format("M{} {}H{}", begin * cell_size, line * cell_size, at * cell_size)
                  : fmt::format("M{} {}V{}", line * cell_size, begin * cell_size, at * cell_size);
        else
          ++at;
      }
    }
  };
  trace(plane.height(), plane.width(), true);
  trace(plane.width(), plane.height(), false);
  return fmt::format("<path class=\"line s-wall\" stroke-width=\"2\" d=\"{}\"/>\n", path);
}

std::string rulers(Plane const& plane) {
  auto const is_told = [](int n, int count) { return count <= 100 || n % 5 == 0; };
  std::string text = "<g class=\"small\" aria-hidden=\"true\">";
  for (int i = 0; i < plane.width(); ++i) {
    if (!is_told(plane.across_number(i), plane.width())) continue;
    text += fmt::format("<text class=\"mid f-quiet\" x=\"{}\" y=\"-26\">{}</text>",
                        i * cell_size + cell_size / 2, plane.across_number(i));
  }
  for (int i = 0; i < plane.height(); ++i) {
    if (!is_told(plane.down_number(i), plane.height())) continue;
    text += fmt::format("<text class=\"end f-quiet\" x=\"-8\" y=\"{}\">{}</text>",
                        i * cell_size + cell_size / 2 + 3, plane.down_number(i));
  }
  return text + "</g>\n";
}

std::string cell_words(PictureScene const& scene, model::Cell c) {
  auto const& [design, map, source, is_alone] = scene.subject;
  auto const material = scene.arrangement->material_of(c);
  auto text =
      fmt::format("{}: {}", place_words(design.grid.place(c)), map.materials[material].name);
  if (auto const* wet = wet_cell(scene, c)) text += ", " + water_words(*wet);
  text += port_words(scene.subject, c);
  if (auto const id = design.fill_of[c]; design.fills[id].is_switched())
    text += ", switched: " + fill_words(scene.subject, id);
  return text;
}

Extent extent_of(PictureScene const& scene, Cut cut) {
  Plane const plane(scene.subject.design.grid, cut);
  return {plane.width() * cell_size + margins.left + margins.right,
          plane.height() * cell_size + margins.top + margins.bottom};
}

std::string level_svg(PictureScene const& scene, Cut cut) {
  Plane const plane(scene.subject.design.grid, cut);
  auto const frame =
      fmt::format("<rect class=\"line s-wall\" stroke-width=\"2\" width=\"{}\" height=\"{}\"/>\n",
                  plane.width() * cell_size, plane.height() * cell_size);
  return fmt::format("<g class=\"cut\"><title>{}</title>\n", cut_words(cut)) + cells(scene, plane) +
         wall_lines(scene.subject.design, plane) + frame + rulers(plane) + ways(scene, plane) +
         port_names(scene, plane) + pins(scene, plane) + "</g>\n";
}

}  // namespace leat::render
