#include <fmt/format.h>

#include <algorithm>

#include "lang/render/bill/bill_sheet.hpp"
#include "lang/render/columns.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

constexpr std::size_t most_level_columns = 10;

using Table = std::vector<std::vector<std::string>>;

std::string count_words(std::size_t count) { return count == 0 ? "-" : std::to_string(count); }

// Numbers end one below the other.
void align_numbers(Table& table, std::size_t first) {
  std::size_t columns = 0;
  for (auto const& row : table) columns = std::max(columns, row.size());
  for (auto column = first; column < columns; ++column) {
    std::size_t width = 0;
    for (auto const& row : table)
      if (column < row.size()) width = std::max(width, columns_of(row[column]));
    for (auto& row : table)
      if (column < row.size()) row[column] = padded_left(row[column], width);
  }
}

std::string section(BillSheet const& sheet, BillKind kind, std::string_view heading, Look look) {
  auto const levels = sheet.needs.needed.size();
  bool const has_levels = levels > 1 && levels <= most_level_columns;
  Table table{{std::string(heading), "all"}};
  for (std::size_t z = 0; has_levels && z < levels; ++z)
    table.front().push_back(fmt::format("level {}", z));
  for (auto const& line : sheet.lines) {
    if (line.kind != kind || line.count == 0) continue;
    table.push_back({showable(line.what), std::to_string(line.count)});
    for (std::size_t z = 0; has_levels && z < levels; ++z)
      table.back().push_back(count_words(line.levels[z]));
  }
  if (table.size() == 1) return {};
  align_numbers(table, 1);
  auto text = aligned(table, 4);
  auto const end = text.find('\n');
  return "\n" + painted(look, Role::quiet, text.substr(0, end)) + text.substr(end);
}

std::string parts_section(BillSheet const& sheet, Look look) {
  Table table{{"redstone", "all", "signals"}};
  for (auto const& line : sheet.lines) {
    if (line.kind != BillKind::part) continue;
    table.push_back({line.what, std::to_string(line.count), listed(line.names, "and", 8)});
  }
  if (table.size() == 1) return {};
  auto text = aligned(table, 4);
  auto const end = text.find('\n');
  return "\n" + painted(look, Role::quiet, text.substr(0, end)) + text.substr(end);
}

std::string remarks(BillSheet const& sheet) {
  std::string text;
  for (auto const& line : sheet.lines) {
    if (line.kind == BillKind::block && line.spare > 0)
      text += fmt::format(
          "    {} of {} {} drawn besides: nothing reaches {}, so anything may "
          "stand there\n",
          counted(line.spare, "cell"), showable(line.what), line.spare == 1 ? "is" : "are",
          line.spare == 1 ? "it" : "them");
  }
  if (auto const around = sheet.around(); around > 0)
    text += fmt::format("    {} of rock around the drawing: {} below, {} beside, {} above\n",
                        counted(around, "cell"), sheet.needs.around.front(),
                        around - sheet.needs.around.front() - sheet.needs.around.back(),
                        sheet.needs.around.back());
  return text.empty() ? text : "\n" + text;
}

std::string placed_section(BillSheet const& sheet) {
  if (sheet.placed.empty()) return {};
  Table table;
  for (auto const& [name, count] : sheet.placed)
    table.push_back({showable(name), fmt::format("{} placed", count)});
  return "\n" + aligned(table, 4);
}

}  // namespace

std::string bill_text(BillSheet const& sheet, Look look) {
  auto const& map = sheet.subject.map;
  return painted(look, Role::strong,
                 fmt::format("{} {}", map.is_works() ? "works" : "junction", map.junction.name)) +
         "\n" + placed_section(sheet) + section(sheet, BillKind::block, "blocks", look) +
         section(sheet, BillKind::switched, "switched cells", look) +
         section(sheet, BillKind::source, "sources, a bucket each", look) +
         section(sheet, BillKind::kept_open, "cells kept free", look) + parts_section(sheet, look) +
         remarks(sheet);
}

}  // namespace leat::render
