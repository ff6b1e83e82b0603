#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/comparison_sheet.hpp"
#include "lang/render/paragraph.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

using compare::Change;

namespace {

std::string entry_text(ComparisonEntry const& entry, Look look) {
  auto result = heading_line(word_of(entry.change),
                             entry.topic == "finding" ? entry.name : std::string(entry.topic),
                             entry.headline, look);
  if (!entry.condition.empty()) {
    auto const when = entry.condition == "on" ? "always" : entry.condition;
    result += worded_line("when", fmt::format("{}  ({})", when, entry.share), look);
  }
  result += worded_line("before", entry.before, look);
  result += worded_line("now", entry.after, look);
  result += worded_line("try", entry.steps, look);
  for (auto const& command : entry.replay) result += see_line(command, look);
  return result + "\n";
}

std::string name_of(ComparisonSheet const& sheet) {
  if (sheet.junction_before == sheet.junction_after || sheet.junction_after.empty())
    return sheet.junction_before;
  if (sheet.junction_before.empty()) return sheet.junction_after;
  return fmt::format("{} (before {})", sheet.junction_after, sheet.junction_before);
}

// Of how many entries of a topic each change is: "1 worse, 2 changed".
std::string counts_of(ComparisonSheet const& sheet, std::string_view topic) {
  std::string words;
  for (auto change : {Change::worse, Change::other, Change::better, Change::same}) {
    std::size_t count = 0;
    for (auto const& entry : sheet.entries)
      count += entry.topic == topic && entry.change == change ? 1u : 0u;
    if (count == 0) continue;
    auto const word = change == Change::same ? "without effect" : word_of(change);
    words += fmt::format("{}{} {}", words.empty() ? "" : ", ", count, word);
  }
  return words;
}

std::string routes_words(ComparisonSheet const& sheet) {
  if (sheet.routes == 0) return "none on both sides";
  auto const same = sheet.routes_same == sheet.routes
                        ? std::string(sheet.routes == 1 ? "the same" : "all the same")
                        : fmt::format("{} of {} the same", sheet.routes_same, sheet.routes);
  auto const changes = counts_of(sheet, "route");
  return fmt::format("{}{}{}, in {} combination{}", same, changes.empty() ? "" : "; ", changes,
                     count_text(sheet.combinations), sheet.combinations == 1 ? "" : "s");
}

std::string summary_lines(ComparisonSheet const& sheet, Look look) {
  auto result = painted(look, Role::strong, "junction " + name_of(sheet)) + "\n";
  if (!sheet.junction_before.empty() && !sheet.junction_after.empty())
    result += worded_line("routes", routes_words(sheet), look);
  for (std::string_view topic : {"finding", "expected", "time", "declared", "signal"}) {
    bool const is_verb = topic.ends_with("ed");
    auto const word = is_verb ? std::string(topic) : fmt::format("{}s", topic);
    result += worded_line(word, counts_of(sheet, topic), look);
  }
  if (sheet.shift)
    result += worded_line("moved", fmt::format("{} (x y z)", place_code(*sheet.shift)), look);
  if (sheet.is_cut) result += worded_line("cut", "more differs than is told", look);
  return result;
}

}  // namespace

std::string comparison_text(FileComparison const& comparison, Look look) {
  std::string result;
  for (auto const& sheet : comparison.sheets) {
    for (auto const& entry : sheet.entries) result += entry_text(entry, look);
  }
  for (auto const& sheet : comparison.sheets) result += summary_lines(sheet, look) + "\n";
  result +=
      painted(look, Role::strong,
              fmt::format("{} after {}", showable(comparison.after), showable(comparison.before))) +
      "\n";
  return result + worded_line("verdict", comparison.verdict, look);
}

}  // namespace leat::render
