#include "lang/render/water_signs.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <set>

#include "lang/render/columns.hpp"
#include "lang/render/fill_words.hpp"
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

// Wet cells ascend, so those of a row stand together.
void note_row(Occurring& found, Scene const& scene, model::Cell first, model::Cell end) {
  auto const& fill_of = scene.subject.design.fill_of;
  for (auto c = first; c < end; ++c) found.fills.insert(fill_of[c]);
  auto wet =
      std::lower_bound(scene.wet.begin(), scene.wet.end(), first,
                       [](water::WetCell const& one, model::Cell cell) { return one.cell < cell; });
  for (; wet != scene.wet.end() && wet->cell < end; ++wet) note_water(found, *wet);
}

Occurring occurring(Scene const& scene, std::vector<View> const& views) {
  Occurring found;
  auto const& grid = scene.subject.design.grid;
  for (auto const& [z, window] : views) {
    for (int y = window.y_begin; y < window.y_end; ++y) {
      auto const first = grid.cell({window.x_begin, y, z});
      note_row(found, scene, first,
               first + static_cast<model::Cell>(window.x_end - window.x_begin));
    }
  }
  return found;
}

using Lines = std::vector<std::vector<std::string>>;

// The cells of inlets and outlets that are drawn, each once.
std::vector<PortCell> drawn_ports(Scene const& scene, std::vector<View> const& views) {
  std::vector<PortCell> drawn;
  auto const& grid = scene.subject.design.grid;
  for (auto const& [z, window] : views) {
    for (int y = window.y_begin; y < window.y_end; ++y) {
      auto const first = grid.cell({window.x_begin, y, z});
      auto const end = first + static_cast<model::Cell>(window.x_end - window.x_begin);
      auto at =
          std::lower_bound(scene.ports.begin(), scene.ports.end(), first,
                           [](PortCell const& port, model::Cell cell) { return port.cell < cell; });
      for (; at != scene.ports.end() && at->cell < end; ++at) drawn.push_back(*at);
    }
  }
  std::sort(drawn.begin(), drawn.end());
  drawn.erase(std::unique(drawn.begin(), drawn.end()), drawn.end());
  return drawn;
}

void add_marks(Lines& lines, Scene const& scene, std::vector<View> const& views,
               std::set<model::FillId> const& fills) {
  constexpr std::size_t most_alike = 4;
  auto const& subject = scene.subject;
  auto const ports = drawn_ports(scene, views);
  auto const is_switched = [&](model::FillId id) { return subject.design.fills[id].is_switched(); };
  struct Alike {
    std::size_t all = 0, told = 0;
  };
  std::map<std::string, Alike> alike;  // switched ones, by mark
  for (auto id : fills)
    if (is_switched(id)) ++alike[subject.map.fills[id].name].all;
  for (auto id : fills) {
    auto const& mark = subject.map.fills[id].name;
    if (!is_switched(id)) {
      lines.push_back({mark, mark_words(subject, id, ports)});
      continue;
    }
    auto& [all, told] = alike[mark];
    auto const left = all - told++;
    if (all <= most_alike + 1 || told <= most_alike)
      lines.push_back({mark, mark_words(subject, id, ports) + "; + powered, - not"});
    else if (told == most_alike + 1)
      lines.push_back({mark, fmt::format("and {} more, each by signals of its own", left)});
  }
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

std::string legend(Scene const& scene, std::vector<View> const& views, PictureStyle style) {
  auto const found = occurring(scene, views);
  Lines lines;
  add_marks(lines, scene, views, found.fills);
  if (found.has_placed) lines.push_back({"S", "water: a placed source"});
  if (found.has_formed) lines.push_back({"G", "water: a formed source"});
  if (found.has_falling) lines.push_back({"F", "water: falling"});
  if (found.has_flow) lines.push_back({"1..", "water: a flow and its strength"});
  auto const currents = arrows_line(found, style.look);
  if (!currents.empty()) lines.push_back({"", "current behind it: " + currents});
  return aligned(lines, style.indent);
}

}  // namespace leat::render
