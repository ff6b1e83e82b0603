#include "lang/render/picture/symbols.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "lang/render/picture/palette.hpp"

namespace leat::render {

namespace {

constexpr std::string_view fixed_symbols =
    R"(<pattern id="hatch" width="8" height="8" patternUnits="userSpaceOnUse"><path class="line s-hatch" stroke-width="1.4" d="M-2 6L6 -2M2 10L10 2"/></pattern>
<pattern id="cross" width="8" height="8" patternUnits="userSpaceOnUse"><path class="line s-hatch" stroke-width="1.2" d="M0 4H8M4 0V8"/></pattern>
<g id="dry"><rect class="f-paper s-grid" width="40" height="40"/></g>
<g id="m-3"><path class="f-fitting" d="M8 9h24v13H22v9h-4v-9H8z"/><path class="line s-paper" stroke-width="1.6" d="M11.5 13.5h17M11.5 17.5h11"/></g>
<g id="m-4"><rect class="f-fitting" x="8" y="8" width="24" height="24" rx="3"/><rect class="line s-paper" stroke-width="1.6" x="13" y="13" width="14" height="14" rx="2"/></g>
<g id="f-e"><path class="line s-current" stroke-width="2.4" d="M10 10L18 20L10 30M22 10L30 20L22 30"/></g>
<g id="e-e"><path class="line s-current" stroke-width="2.4" d="M32 15L36 20L32 25"/></g>
<g id="f-still"><path class="line s-current" stroke-width="2" d="M9 17q2.75-4 5.5 0t5.5 0t5.5 0t5.5 0M9 25q2.75-4 5.5 0t5.5 0t5.5 0t5.5 0"/></g>
<g id="f-near"><circle class="line s-current" stroke-width="2" cx="20" cy="20" r="8"/><circle class="f-current" cx="20" cy="20" r="2.5"/></g>
<g id="f-far"><circle class="line s-current" stroke-width="2" cx="20" cy="20" r="8"/><path class="line s-current" stroke-width="2" d="M14.5 14.5l11 11M25.5 14.5l-11 11"/></g>
<g id="e-near"><circle class="f-current" cx="33" cy="20" r="2.5"/></g>
<g id="e-far"><path class="line s-current" stroke-width="1.8" d="M30.5 17.5l5 5M35.5 17.5l-5 5"/></g>
<g id="k-on"><rect class="line s-switch" stroke-width="2" stroke-dasharray="5 4" x="2.5" y="2.5" width="35" height="35"/><path class="f-switch" d="M38 2v13L25 2z"/></g>
<g id="k-off"><rect class="line s-switch" stroke-width="2" stroke-dasharray="5 4" x="2.5" y="2.5" width="35" height="35"/><path class="f-paper s-switch" stroke-width="1.6" d="M37 3v11L26 3z"/></g>
<g id="inlet"><rect class="line s-inlet" stroke-width="3" x="3" y="3" width="34" height="34" rx="9"/><path class="f-inlet" d="M6 35h11l-5.5-8z"/></g>
<g id="outlet"><path class="line s-outlet" stroke-width="1.6" d="M1.5 1.5h37v37h-37zM5.5 5.5h29v29h-29z"/><path class="f-paper s-outlet" stroke-width="1.6" d="M5 27h11l-5.5 8z"/></g>
)";

constexpr std::array<std::string_view, 8> compass{"e", "se", "s", "sw", "w", "nw", "n", "ne"};

// Which of the compass a drift points to, clockwise from the east.
std::size_t point_of(int right, int down) {
  for (std::size_t i = 0; i < compass.size(); ++i) {
    constexpr std::array<int, 8> x{1, 1, 0, -1, -1, -1, 0, 1}, y{0, 1, 1, 1, 0, -1, -1, -1};
    if (x[i] == right && y[i] == down) return i;
  }
  return 0;
}

int class_of(int strength, model::Practice const& practice) {
  auto const top = practice[model::Rule::source_strength];
  return std::clamp((strength * water_classes + top - 1) / top, 1, water_classes);
}

std::string water_ground(std::string_view id, int shade, std::string_view inside) {
  return fmt::format(
      "<g id=\"w-{}\"><rect class=\"f-water{} s-grid\" width=\"40\" height=\"40\"/>{}</g>\n", id,
      shade, inside);
}

std::string water_symbols(model::Practice const& practice) {
  std::string text;
  for (int strength = 1; strength < practice[model::Rule::source_strength]; ++strength) {
    text += water_ground(std::to_string(strength), class_of(strength, practice),
                         fmt::format("<text class=\"end small f-current\" x=\"37\" y=\"37\">{}"
                                     "</text>",
                                     strength));
  }
  constexpr auto drop = "M20 5C23.5 11 28 15 28 20.5A8 8 0 0 1 12 20.5C12 15 16.5 11 20 5z";
  text += water_ground("placed", water_classes,
                       fmt::format("<path class=\"f-current\" d=\"{}\"/>", drop));
  text += water_ground(
      "formed", water_classes,
      fmt::format("<path class=\"line s-current\" stroke-width=\"2.4\" d=\"{}\"/>", drop));
  text += water_ground("falling", water_classes, R"(<use href="#f-far"/>)");
  return text + water_ground("pouring", water_classes,
                             R"(<path class="line s-current" stroke-width="2.4" )"
                             R"(d="M12 9l8 6l8-6M12 18l8 6l8-6M12 27l8 6l8-6"/>)");
}

std::string turned_symbols() {
  std::string text;
  for (auto const* kind : {"f", "e"}) {
    for (std::size_t i = 1; i < compass.size(); ++i) {
      text += fmt::format(
          "<g id=\"{0}-{1}\"><use href=\"#{0}-e\" transform=\"rotate({2} 20 20)\"/>"
          "</g>\n",
          kind, compass[i], 45 * i);
    }
  }
  return text;
}

// Declared materials are told apart by their patterns: a lattice for what water passes, beams for
// what bodies pass, both for both; a post where they carry.
std::string declared_symbol(model::Design const& design, model::MaterialId id) {
  auto const& material = design.materials[id];
  std::string inside;
  if (!material.water_enters && !material.body_enters) {
    inside =
        R"x(<rect class="f-rock" width="40" height="40"/><rect fill="url(#cross)" width="40" height="40"/>)x";
  } else {
    std::string path;
    if (material.water_enters) path += "M4 8H36M4 20H36M4 32H36";
    if (material.carries) path += "M8 4V36M20 4V36M32 4V36";
    if (material.body_enters) path += "M4 4L36 36";
    inside = fmt::format(
        "<path class=\"line s-fitting\" stroke-width=\"1.6\" stroke-dasharray=\"{} 3\" d=\"{}\"/>",
        3 + id % 4, path);
  }
  return fmt::format("<g id=\"m-{}\">{}</g>\n", id, inside);
}

}  // namespace

std::string symbol_definitions(Subject const& subject) {
  auto const& design = subject.design;
  std::string text(fixed_symbols);
  text += R"(<g id="m-0"><rect class="f-rock" width="40" height="40"/>)"
          R"x(<rect fill="url(#hatch)" width="40" height="40"/></g>)x"
          "\n";
  text += turned_symbols() + water_symbols(design.practice);
  for (std::size_t m = model::built_in_materials.size(); m < design.materials.size(); ++m)
    text += declared_symbol(design, static_cast<model::MaterialId>(m));
  return text;
}

std::string water_symbol(water::WetCell const& wet, Plane const& plane) {
  if (wet.state == water::falling) return plane.is_level() ? "w-falling" : "w-pouring";
  if (wet.state == water::source) return wet.is_placed ? "w-placed" : "w-formed";
  return fmt::format("w-{}", wet.strength);
}

std::string current_symbol(water::WetCell const& wet, Plane const& plane) {
  bool const is_flow = water::is_flow(wet.state);
  std::string const kind = is_flow ? "f-" : "e-";
  auto const drift = plane.drift(wet.current);
  if (drift.right != 0 || drift.down != 0)
    return kind + std::string(compass[point_of(drift.right, drift.down)]);
  if (drift.nearer != 0) return kind + (drift.nearer > 0 ? "near" : "far");
  return is_flow ? "f-still" : "";
}

std::string material_symbol(model::MaterialId id) {
  if (id == model::material::open || id == model::material::water) return {};
  return fmt::format("m-{}", id);
}

bool is_solid(model::Design const& design, model::FillId id) {
  auto const& fill = design.fills[id];
  auto const& material = design.materials[fill.powered];
  return !fill.is_switched() && !material.water_enters && !material.body_enters;
}

}  // namespace leat::render
