#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string conditions(TableSheet const& sheet, Lane const& lane) {
  std::vector<std::vector<std::string>> lines;
  for (auto const& d : lane.destinations) {
    auto const name = destination_words(d.outlets);
    auto const share = share_words(d.combinations, sheet.row_count);
    // Conditions of many signals are long: they come last.
    if (sheet.is_wide)
      lines.push_back({name, std::string(word_of(d.verdict)), share, d.words});
    else
      lines.push_back({name, d.words, share});
  }
  return aligned(lines, 4);
}

}  // namespace

std::string table_text(TableSheet const& sheet) {
  auto result = fmt::format("{} {}\n", sheet.is_works ? "works" : "junction", sheet.junction);
  if (!sheet.is_decided) {
    return result + fmt::format("\n  undecided: {}\n", undecided_words(sheet));
  }
  for (auto const& group : grouped(sheet)) {
    result += fmt::format("\n  from {}, {}\n\n", group.inlet, listed(group.bodies));
    if (!sheet.is_wide) result += aligned(table_lines(sheet, *group.lane), 4) + "\n";
    result += conditions(sheet, *group.lane);
  }
  return result;
}

}  // namespace leat::render
