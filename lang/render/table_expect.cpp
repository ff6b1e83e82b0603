#include <fmt/format.h>

#include "lang/render/columns.hpp"
#include "lang/render/table_sheet.hpp"

namespace leat::render {

namespace {

struct ExpectRow {
  std::vector<Setting> settings;
  std::vector<std::string> outlets;
  body::Verdict verdict;
};

std::vector<ExpectRow> rows_of(TableSheet const& sheet, Lane const& lane) {
  std::vector<ExpectRow> rows;
  for (std::size_t i = 0; i < lane.routes.size(); ++i) {
    rows.push_back({sheet.rows[i], lane.routes[i].outlets, lane.routes[i].verdict});
  }
  if (sheet.is_full) return rows;
  for (auto const& d : lane.destinations) {
    for (auto const& row : d.rows) rows.push_back({row, d.outlets, d.verdict});
  }
  return rows;
}

std::string block(TableSheet const& sheet, Lane const& lane) {
  std::vector<std::vector<std::string>> lines{sheet.signals};
  lines[0].push_back("| route");
  std::string doubts;
  for (auto const& row : rows_of(sheet, lane)) {
    std::vector<std::string> line;
    for (auto setting : row.settings) line.emplace_back(1, static_cast<char>(setting));
    line.push_back(fmt::format("| {}", destination_words(row.outlets)));
    if (row.verdict == body::Verdict::doubtful) {
      std::string words;
      for (auto const& cell : line) words += cell + " ";
      doubts += fmt::format("# doubtful, so not expected: {}\n", words.substr(0, words.size() - 1));
    } else {
      lines.push_back(std::move(line));
    }
  }
  auto const heading =
      fmt::format("expect table {} from {} of {}", lane.body, lane.inlet, sheet.junction);
  if (lines.size() == 1) return doubts + "# nothing to expect: " + heading + "\n";
  return doubts + heading + " {\n" + aligned(lines, 2) + "}\n";
}

std::string wide_clause(Lane const& lane, DestinationEntry const& d) {
  std::string clauses;
  auto const when = d.condition == "on" ? "" : " when " + d.condition;
  bool const is_doubtful = d.verdict == body::Verdict::doubtful;
  if (d.outlets.empty())
    return fmt::format("  {} from {} reaches nothing{}\n", lane.body, lane.inlet, when);
  for (auto const& outlet : d.outlets)
    clauses += fmt::format("  {}{} from {} {} {}{}\n", is_doubtful ? "# doubtful: " : "", lane.body,
                           lane.inlet, d.outlets.size() > 1 ? "may reach" : "reaches", outlet, when);
  return clauses;
}

// Too many signals for the columns of a table: a clause for each destination.
std::string wide_block(TableSheet const& sheet) {
  auto result = fmt::format("expect of {} {{\n", sheet.junction);
  for (auto const& lane : sheet.lanes) {
    for (auto const& d : lane.destinations) result += wide_clause(lane, d);
  }
  return result + "}\n";
}

}  // namespace

std::string table_expect(TableSheet const& sheet) {
  if (sheet.is_wide) return wide_block(sheet);
  std::string result;
  for (auto const& lane : sheet.lanes) {
    result.append(result.empty() ? "" : "\n").append(block(sheet, lane));
  }
  return result;
}

}  // namespace leat::render
