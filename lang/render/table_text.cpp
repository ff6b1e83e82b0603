#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string conditions(TableSheet const& sheet, Lane const& lane) {
  std::vector<std::vector<std::string>> lines;
  for (auto const& d : lane.destinations) {
    lines.push_back(
        {destination_words(d.outlets), d.words, share_words(d.combinations, sheet.row_count)});
  }
  return aligned(lines, 4);
}

}  // namespace

std::string table_text(TableSheet const& sheet) {
  auto result = fmt::format("junction {}\n", sheet.junction);
  if (!sheet.is_decided) {
    return result + (sheet.is_restless ? "\n  undecided: the signals never come to rest as built\n"
                                       : fmt::format("\n  undecided: {} are too many to run\n",
                                                     counted(sheet.signals.size(), "signal")));
  }
  for (auto const& group : grouped(sheet)) {
    result += fmt::format("\n  from {}, {}\n\n", group.inlet, listed(group.bodies));
    result += aligned(table_lines(sheet, *group.lane), 4);
    result += fmt::format("\n{}", conditions(sheet, *group.lane));
  }
  return result;
}

}  // namespace leat::render
