#include "lang/render/table_lines.hpp"

#include <fmt/format.h>

#include "lang/render/words.hpp"

namespace leat::render {

namespace {

bool is_same_way(RouteEntry const& a, RouteEntry const& b) {
  return a.verdict == b.verdict && a.outlets == b.outlets && a.trapped == b.trapped &&
         a.spills == b.spills && a.is_unsure == b.is_unsure;
}

bool go_the_same_ways(Lane const& a, Lane const& b) {
  if (a.inlet != b.inlet || a.destinations != b.destinations) return false;
  for (std::size_t row = 0; row < a.routes.size(); ++row) {
    if (!is_same_way(a.routes[row], b.routes[row])) return false;
  }
  return true;
}

std::vector<std::string> setting_cells(std::vector<Setting> const& settings) {
  std::vector<std::string> cells;
  for (auto setting : settings) cells.emplace_back(1, static_cast<char>(setting));
  return cells;
}

std::string remark(RouteEntry const& route) {
  std::string words;
  if (!route.trapped.empty()) {
    std::vector<std::string> places;
    for (auto at : route.trapped) places.push_back(place_code(at));
    words = "trapped at " + listed(places, "and", 3);
  }
  if (route.spills) words += words.empty() ? "spills" : "; spills";
  if (route.is_unsure) words += words.empty() ? "unsure" : "; unsure";
  return words;
}

}  // namespace

std::vector<LaneGroup> grouped(TableSheet const& sheet) {
  std::vector<LaneGroup> groups;
  for (auto const& lane : sheet.lanes) {
    bool is_told = false;
    for (auto& group : groups) {
      if (!go_the_same_ways(*group.lane, lane)) continue;
      group.bodies.push_back(lane.body);
      is_told = true;
      break;
    }
    if (!is_told) groups.push_back({lane.inlet, {lane.body}, &lane});
  }
  return groups;
}

std::vector<std::vector<std::string>> table_lines(TableSheet const& sheet, Lane const& lane) {
  std::vector<std::vector<std::string>> lines{sheet.signals};
  lines[0].insert(lines[0].end(), {"goes to", "verdict"});
  if (sheet.is_full) {
    lines[0].push_back("remarks");
    for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
      auto const& route = lane.routes[row];
      auto line = setting_cells(sheet.rows[row]);
      line.insert(line.end(), {destination_words(route.outlets),
                               std::string(word_of(route.verdict)), remark(route)});
      lines.push_back(std::move(line));
    }
    return lines;
  }
  for (auto const& destination : lane.destinations) {
    for (auto const& row : destination.rows) {
      auto line = setting_cells(row);
      line.insert(line.end(), {destination_words(destination.outlets),
                               std::string(word_of(destination.verdict))});
      lines.push_back(std::move(line));
    }
  }
  return lines;
}

std::string share_words(Count count, Count of) {
  if (of == 1) return "the only combination";
  return count == of ? fmt::format("all {} combinations", count_text(of))
                     : fmt::format("{} of {} combinations", count_text(count), count_text(of));
}

}  // namespace leat::render
