#include <fmt/format.h>

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/render/example.hpp"
#include "lang/render/guard.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using explore::Danger;
using explore::Guard;

works::Change change_of(Guard const& guard) { return {guard.event, guard.goes_on}; }

std::string change_words(Subject const& subject, works::Change const& change) {
  return subject.map.signals[change.first].name + (change.second ? " on" : " off");
}

std::string ticks_words(Subject const& subject, std::optional<int> ticks) {
  return ticks ? time_words(subject, *ticks) : "no bound";
}

std::string short_dangers(Guard const& guard) {
  std::vector<std::string> words;
  for (auto const& threat : guard.threats) {
    std::string const word(word_of(threat.danger.kind));
    if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
  }
  return words.empty() ? "nobody" : listed(words);
}

std::string headline_of(GuardPart const& part, Guard const& guard, Danger const& danger) {
  auto const& map = part.subject.map;
  auto headline = fmt::format("the {} from {} when {} goes {}", map.profiles[danger.profile].name,
                              map.inlets[danger.inlet].name, map.signals[guard.event].name,
                              guard.goes_on ? "on" : "off");
  if (danger.outlet) headline += ", to " + map.outlets[*danger.outlet].name;
  return headline;
}

// Where nothing is drawn.
std::string cells_words(Subject const& subject, std::vector<model::Cell> const& cells) {
  std::vector<std::string> places;
  for (auto c : cells) places.push_back(place_code(subject.design.grid.place(c)));
  return listed(places);
}

std::string threat_text(GuardPart const& part, Guard const& guard, explore::Threat const& threat,
                        Scene const* scene, Look look) {
  auto const& [danger, rows, example] = threat;
  auto result = fmt::format("{}  {}\n", painted(look, Role::note, word_of(danger.kind)),
                            headline_of(part, guard, danger));
  if (!danger.cells.empty() && scene != nullptr)
    result += marked_pictures(*scene, danger.cells, "before the change", look);
  else
    result += worded_line("at", cells_words(part.subject, danger.cells), look);
  result += worded_line("when", where_words(part.subject, part.judgement, rows), look);
  return result + worded_line("try", steps_then(part.subject, example.flips, guard.event), look);
}

std::string heading(GuardPart const& part, Look look) {
  auto const& map = part.subject.map;
  std::vector<std::string> places;
  for (auto const& place : part.places) places.push_back(place.name);
  auto name = fmt::format("{} {}", map.is_works() ? "works" : "junction", map.junction.name);
  if (!places.empty()) name += ", " + places.front();
  auto result = painted(look, Role::strong, name) + "\n";
  if (places.size() > 1)
    result += worded_line("also in", listed({places.begin() + 1, places.end()}), look);
  return result + "\n";
}

// "low on for divert on, low off for divert off": what is flipped at a place, where that is not
// what the table says.
std::string flips_words(GuardPart const& part, GuardPlace const& place) {
  std::string words;
  for (std::size_t g = 0; g < part.judgement.guards.size(); ++g) {
    auto const change = change_of(part.judgement.guards[g]);
    if (place.flips[g] == std::vector{change}) continue;
    std::vector<std::string> flips;
    for (auto const& flip : place.flips[g]) flips.push_back(change_words(part.subject, flip));
    words += fmt::format("{}{} for {}", words.empty() ? "" : ", ",
                         flips.empty() ? "nothing" : listed(flips, "or"),
                         change_words(part.subject, change));
  }
  return words;
}

std::string flips_lines(GuardPart const& part, Look look) {
  std::string lines;
  for (auto const& place : part.places) {
    auto const words = flips_words(part, place);
    if (!words.empty()) lines += worded_line("in", place.name + ": " + words, look);
  }
  return lines.empty() ? lines : "\n" + lines;
}

}  // namespace

std::string guard_text(GuardPart const& part, Look look) {
  auto const& [subject, judgement, sights, places] = part;
  auto result = heading(part, look);
  if (judgement.guards.empty())
    return result + "    No change of an input moves a cell: nothing to wait for.\n";
  std::vector<std::vector<std::string>> lines{
      {"change", "wait before it", "inside leave within", "in danger without"}};
  for (auto const& guard : judgement.guards) {
    auto const wait = guard.threats.empty() ? "none needed" : ticks_words(subject, guard.wait);
    lines.push_back({change_words(subject, change_of(guard)), wait,
                     ticks_words(subject, guard.clearing), short_dangers(guard)});
  }
  result += aligned(lines, 4) + flips_lines(part, look);
  std::size_t sight = 0;
  for (auto const& guard : judgement.guards) {
    for (auto const& threat : guard.threats)
      result.append("\n").append(
          threat_text(part, guard, threat, sights.empty() ? nullptr : sights[sight++], look));
  }
  return result;
}

}  // namespace leat::render
