#include "lang/render/water_signs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <set>

#include "lang/render/columns.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// Directions as 3 * (south + 1) + (east + 1): north-west first, none in the middle.
std::size_t direction(water::Current current) {
  auto const sign = [](int n) { return n > 0 ? 2u : n < 0 ? 0u : 1u; };
  return 3u * sign(current.y) + sign(current.x);
}

constexpr std::array<std::string_view, 9> arrows{"↖", "↑", "↗", "←", "·", "→", "↙", "↓", "↘"};
constexpr std::array<std::string_view, 9> ascii_arrows{"`", "^", "'", "<", ".",
                                                       ">", "/", "v", "\\"};
constexpr std::array<std::string_view, 9> direction_words{
    "north and west", "north",          "north and east", "west",          "",
    "east",           "south and west", "south",          "south and east"};

std::string kind_sign(water::WetCell const& wet) {
  if (wet.state == water::falling) return "F";
  if (wet.state == water::source) return wet.is_placed ? "S" : "G";
  return std::to_string(wet.strength);
}

// The inlets (or outlets) that cells of this fill belong to.
std::vector<std::string> ports_of(Subject const& subject, model::FillId id,
                                  std::vector<model::Port> const& ports,
                                  std::vector<source::Named> const& names) {
  std::vector<std::string> found;
  for (std::size_t p = 0; p < ports.size(); ++p) {
    auto const& cells = ports[p].cells;
    if (std::any_of(cells.begin(), cells.end(),
                    [&](model::Cell c) { return subject.design.fill_of[c] == id; })) {
      found.push_back(names[p].name);
    }
  }
  return found;
}

std::vector<std::string> mark_line(Subject const& subject, model::FillId id) {
  auto meaning = mark_words(subject, id);
  if (subject.design.fills[id].is_switched()) meaning += "; + powered, - not";
  return {subject.map.fills[id].name, meaning};
}

struct Occurring {
  std::set<model::FillId> fills;
  bool has_placed = false, has_formed = false, has_falling = false, has_flow = false;
  bool has_still = false;
  std::set<std::size_t> directions;
};

void note_water(Occurring& found, water::WetCell const& wet) {
  bool const is_source = wet.state == water::source;
  found.has_placed |= is_source && wet.is_placed;
  found.has_formed |= is_source && !wet.is_placed;
  found.has_falling |= wet.state == water::falling;
  found.has_flow |= water::is_flow(wet.state);
  found.has_still |= wet.current == water::Current{};
  if (wet.current != water::Current{}) found.directions.insert(direction(wet.current));
}

Occurring occurring(Scene const& scene, std::vector<int> const& levels) {
  Occurring found;
  auto const& grid = scene.subject.design.grid;
  for (int z : levels) {
    for (int y = 0; y < grid.depth(); ++y) {
      for (int x = 0; x < grid.width(); ++x) {
        found.fills.insert(scene.subject.design.fill_of[grid.cell({x, y, z})]);
      }
    }
  }
  for (auto const& wet : scene.wet) {
    if (std::find(levels.begin(), levels.end(), grid.place(wet.cell).z) != levels.end()) {
      note_water(found, wet);
    }
  }
  return found;
}

std::string arrows_line(Occurring const& found, Look look) {
  std::string line;
  for (auto d : found.directions) {
    line += fmt::format("{} {}, ", look.is_ascii ? ascii_arrows[d] : arrows[d], direction_words[d]);
  }
  if (found.has_still) line += fmt::format("{} still, ", look.is_ascii ? "." : "·");
  if (!line.empty()) line.resize(line.size() - 2);
  return line;
}

}  // namespace

std::string fill_meaning(Subject const& subject, model::FillId id) {
  auto const& fill = subject.design.fills[id];
  auto const name = [&](model::MaterialId m) { return subject.map.materials[m].name; };
  if (!fill.is_switched()) return name(fill.powered);
  return fmt::format("{} when {} else {}", name(fill.powered),
                     expression_text(subject.design.circuit, subject.map.signals, *fill.control),
                     name(fill.unpowered));
}

std::string mark_words(Subject const& subject, model::FillId id) {
  auto const& design = subject.design;
  std::string meaning;
  auto const add = [&](std::vector<std::string> const& names, std::string_view role) {
    if (names.empty()) return;
    meaning +=
        fmt::format("{} {}, ", names.size() == 1 ? role : fmt::format("{}s", role), listed(names));
  };
  add(ports_of(subject, id, design.inlets, subject.map.inlets), "inlet");
  add(ports_of(subject, id, design.outlets, subject.map.outlets), "outlet");
  return meaning + fill_meaning(subject, id);
}

std::string water_sign(water::WetCell const& wet, Look look) {
  auto const d = direction(wet.current);
  return kind_sign(wet).append(look.is_ascii ? ascii_arrows[d] : arrows[d]);
}

std::string water_words(water::WetCell const& wet) {
  std::string text;
  if (wet.state == water::falling) {
    text = "falling water";
  } else if (wet.state == water::source) {
    text = wet.is_placed ? "a source" : "a formed source";
  } else {
    text = fmt::format("a flow of strength {}", wet.strength);
  }
  auto const where = direction_words[direction(wet.current)];
  return where.empty() ? text + ", still" : fmt::format("{}, current {}", text, where);
}

std::string legend(Scene const& scene, std::vector<int> const& levels, PictureStyle style) {
  auto const found = occurring(scene, levels);
  std::vector<std::vector<std::string>> lines;
  for (auto id : found.fills) lines.push_back(mark_line(scene.subject, id));
  if (found.has_placed) lines.push_back({"S", "water: a placed source"});
  if (found.has_formed) lines.push_back({"G", "water: a formed source"});
  if (found.has_falling) lines.push_back({"F", "water: falling"});
  if (found.has_flow) lines.push_back({"1..", "water: a flow and its strength"});
  auto const currents = arrows_line(found, style.look);
  if (!currents.empty()) lines.push_back({"", "current behind it: " + currents});
  return aligned(lines, style.indent);
}

}  // namespace leat::render
