#include <fmt/format.h>

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/render/condition.hpp"
#include "lang/render/example.hpp"
#include "lang/render/guard.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

using explore::Danger;
using explore::Guard;

std::string change_words(Subject const& subject, Guard const& guard) {
  return subject.map.signals[guard.event].name + (guard.goes_on ? " on" : " off");
}

std::string ticks_words(Subject const& subject, std::optional<int> ticks) {
  return ticks ? time_words(subject, *ticks) : "no bound";
}

std::string short_dangers(Guard const& guard) {
  std::vector<std::string> words;
  for (auto const& danger : guard.dangers) {
    std::string const word(word_of(danger.kind));
    if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
  }
  return words.empty() ? "nobody" : listed(words);
}

std::string danger_text(GuardPart const& part, Guard const& guard, Danger const& danger,
                        Scene const* scene, Look look) {
  auto const& map = part.subject.map;
  auto headline = fmt::format("the {} from {} when {} goes {}", map.profiles[danger.profile].name,
                              map.inlets[danger.inlet].name, map.signals[guard.event].name,
                              guard.goes_on ? "on" : "off");
  if (danger.outlet) headline += ", to " + map.outlets[*danger.outlet].name;
  auto result = fmt::format("{}  {}\n", painted(look, Role::note, word_of(danger.kind)), headline);
  if (!danger.cells.empty() && scene != nullptr)
    return result + marked_pictures(*scene, danger.cells, "before the change", look);
  return result + "\n";
}

std::string detail_text(GuardPart const& part, Guard const& guard, Scene const* scene, Look look) {
  std::string result;
  for (auto const& danger : guard.dangers) result += danger_text(part, guard, danger, scene, look);
  auto const& judgement = part.judgement;
  auto const& reachable = judgement.combinations.reachable;
  auto words = condition_words(guard.rows, reachable,
                               names_of(part.subject.map.signals, judgement.variables));
  if (words.starts_with("when ")) words.erase(0, 5);
  result += worded_line(
      "when", fmt::format("{}  ({})", words, share_words(guard.rows.count(), reachable.count())),
      look);
  auto const last = last_step(part.subject, guard.example.flips, guard.event);
  auto const steps = player_steps(part.subject, guard.example.flips);
  return result +
         worded_line("try", guard.example.flips.empty() ? last : steps + ", then " + last, look);
}

}  // namespace

std::string guard_text(GuardPart const& part, Look look) {
  auto const& [subject, judgement, sights] = part;
  auto result = painted(look, Role::strong, "junction " + subject.map.junction.name) + "\n\n";
  if (judgement.guards.empty())
    return result + "    No change of an input moves a cell: nothing to wait for.\n";
  std::vector<std::vector<std::string>> lines{
      {"change", "wait before it", "inside leave within", "in danger without"}};
  for (auto const& guard : judgement.guards) {
    auto const wait = guard.dangers.empty() ? "none needed" : ticks_words(subject, guard.wait);
    lines.push_back({change_words(subject, guard), wait, ticks_words(subject, guard.clearing),
                     short_dangers(guard)});
  }
  result += aligned(lines, 4);
  for (std::size_t i = 0; i < judgement.guards.size(); ++i) {
    auto const& guard = judgement.guards[i];
    if (!guard.dangers.empty())
      result.append("\n").append(detail_text(part, guard, sights[i], look));
  }
  return result;
}

}  // namespace leat::render
