#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "lang/render/bill/bill_sheet.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/fill_words.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// Larger levels have no picture, only numbers.
constexpr int most_columns = 200;
constexpr std::string_view later = "·";

struct Level {
  std::map<model::FillId, std::size_t> counts;  // marks that are placed, or kept free
  bool has_later = false;
  std::string rows;
};

std::string ruler(int width) {
  std::string line;
  for (int x = 0; x < width; x += 5) {
    line.append(
        static_cast<std::size_t>(2 * x) - std::min(line.size(), static_cast<std::size_t>(2 * x)),
        ' ');
    line += std::to_string(x);
  }
  return line;
}

// Every cell that matters with its own mark; sources come later.
Level level_of(BillSheet const& sheet, int z) {
  auto const& [design, map, source, is_alone] = sheet.subject;
  auto const number_width = std::to_string(design.grid.depth() - 1).size();
  Level level;
  level.rows =
      fmt::format("    {}  {}\n", std::string(number_width, ' '), ruler(design.grid.width()));
  for (int y = 0; y < design.grid.depth(); ++y) {
    std::string line = fmt::format("    {}  ", padded_left(std::to_string(y), number_width));
    for (int x = 0; x < design.grid.width(); ++x) {
      auto const c = design.grid.cell({x, y, z});
      auto const id = design.fill_of[c];
      auto const& fill = design.fills[id];
      std::string_view sign = " ";
      if (!fill.is_switched() && design.materials[fill.powered].is_source) {
        sign = later;
        level.has_later = true;
      } else if (building::is_needed(design, c)) {
        sign = map.fills[id].name;
        ++level.counts[id];
      }
      line.append(sign).append(" ");
    }
    line.erase(line.find_last_not_of(' ') + 1);
    level.rows += line + "\n";
  }
  return level;
}

// Each mark of the level: how many, and what is to be placed there.
std::string counts(BillSheet const& sheet, Level const& level, std::size_t around) {
  auto const& [design, map, source, is_alone] = sheet.subject;
  auto const ports = port_cells(design);
  std::vector<std::vector<std::string>> lines;
  for (auto const& [id, count] : level.counts) {
    bool const is_free =
        !design.fills[id].is_switched() && design.fills[id].powered == model::material::open;
    auto const words = showable(mark_words(sheet.subject, id, ports));
    lines.push_back({map.fills[id].name, is_free ? "" : std::to_string(count),
                     is_free ? words + ": kept free" : words});
  }
  if (level.has_later) lines.push_back({std::string(later), "", "kept free: a source comes later"});
  if (around > 0) lines.push_back({"", std::to_string(around), "rock around the drawing"});
  std::size_t width = 0;
  for (auto const& line : lines) width = std::max(width, line[1].size());
  for (auto& line : lines) line[1] = padded_left(line[1], width);
  return aligned(lines, 4);
}

std::string level_step(BillSheet const& sheet, int z) {
  auto const level = level_of(sheet, z);
  auto const listed = counts(sheet, level, sheet.needs.around[static_cast<std::size_t>(z + 1)]);
  if (sheet.subject.design.grid.width() > most_columns) return listed;
  return level.rows + "\n" + listed;
}

std::string water_step(BillSheet const& sheet, building::Pool const& pool) {
  constexpr std::size_t most_places = 24;
  std::vector<std::string> places;
  auto const& design = sheet.subject.design;
  for (auto c : pool.sources) {
    places.push_back(place_words(design.grid.place(c)));
    if (auto const id = design.fill_of[c]; design.fills[id].is_switched())
      places.back() += ", switched: " + showable(fill_words(sheet.subject, id));
  }
  std::string text;
  for (std::size_t i = 0; i < std::min(places.size(), most_places); ++i)
    text += fmt::format("    a source at {}\n", places[i]);
  if (places.size() > most_places)
    text += fmt::format("    and {}\n", counted(places.size() - most_places, "more source"));
  auto held = fmt::format("held by {}", counted(pool.holders.size(), "cell"));
  if (pool.around > 0) held += fmt::format(" and {} around the drawing", pool.around);
  return text + fmt::format("    the water then stands in {}, {}\n",
                            counted(pool.wet.size(), "cell"), held);
}

std::string heading(BillSheet const& sheet, BuildingStep const& step) {
  using Kind = BuildingStep::Kind;
  switch (step.kind) {
    case Kind::floor:
      return "the floor below level 0";
    case Kind::roof:
      return "the roof";
    case Kind::level:
      return fmt::format("level {}", step.level);
    case Kind::water:
      break;
  }
  auto const& pool = sheet.pools.pools[step.pool];
  return fmt::format(
      "water: {}, once {}", counted(pool.sources.size(), "source"),
      step.level == 0 ? "level 0 stands" : fmt::format("all up to level {} stands", step.level));
}

std::string body(BillSheet const& sheet, BuildingStep const& step) {
  using Kind = BuildingStep::Kind;
  if (step.kind == Kind::level) return level_step(sheet, step.level);
  if (step.kind == Kind::water) return water_step(sheet, sheet.pools.pools[step.pool]);
  auto const count =
      step.kind == Kind::floor ? sheet.needs.around.front() : sheet.needs.around.back();
  return fmt::format("    {} of rock {} what is drawn\n", counted(count, "cell"),
                     step.kind == Kind::floor ? "below" : "above");
}

}  // namespace

std::string steps_text(BillSheet const& sheet, Look look) {
  auto const& map = sheet.subject.map;
  auto text = painted(look, Role::strong,
                      fmt::format("building {}, from the bottom up", map.junction.name)) +
              "\n    Leave everything that switches as built until the last step is done.\n";
  if (!sheet.pools.is_each_tried)
    text += "    The sources are many: place those of one step from the lowest up, and watch.\n";
  std::size_t number = 0;
  for (auto const& step : building_steps(sheet)) {
    text += "\n" +
            painted(look, Role::strong, fmt::format("{}. {}", ++number, heading(sheet, step))) +
            "\n" + body(sheet, step);
  }
  return text;
}

}  // namespace leat::render
