#include <fmt/format.h>

#include "lang/render/markdown.hpp"
#include "lang/render/table_lines.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string pipe_table(std::vector<std::vector<std::string>> lines) {
  for (auto& line : lines) {
    for (auto& cell : line) cell = markdown_text(cell);
  }
  return markdown_table(lines);
}

std::string condition_table(TableSheet const& sheet, Lane const& lane) {
  std::vector<std::vector<std::string>> lines{{"goes to", "condition", "combinations"}};
  for (auto const& d : lane.destinations) {
    lines.push_back(
        {destination_words(d.outlets), d.words,
         fmt::format("{} of {}", count_text(d.combinations), count_text(sheet.row_count))});
  }
  return pipe_table(std::move(lines));
}

}  // namespace

std::string table_markdown(TableSheet const& sheet) {
  auto result = fmt::format("## {}\n", markdown_text(sheet.junction));
  if (!sheet.is_decided) {
    return result + fmt::format("\nUndecided: {}.\n", undecided_words(sheet));
  }
  for (auto const& group : grouped(sheet)) {
    result += fmt::format("\n### From {}, {}\n\n", markdown_text(group.inlet),
                          markdown_text(listed(group.bodies)));
    if (!sheet.is_wide) result += pipe_table(table_lines(sheet, *group.lane)) + "\n";
    result += condition_table(sheet, *group.lane);
  }
  return result;
}

}  // namespace leat::render
