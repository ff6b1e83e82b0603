#include "lang/syntax/aligning.hpp"

#include <algorithm>
#include <map>
#include <span>
#include <utility>

#include "lang/source/code_point.hpp"
#include "lang/syntax/breaking.hpp"

namespace leat::syntax {

namespace {

using Run = std::span<WovenLine const>;

bool can_be_in_run(WovenLine const& woven) {
  return woven.line == nullptr || woven.line->kind == LineKind::plain;
}

// The run that begins with the first line; a line that can be in none is one by itself.
Run first_run(Run lines) {
  std::size_t length = 1;
  if (can_be_in_run(lines.front()))
    while (length < lines.size() && can_be_in_run(lines[length]) &&
           !lines[length].has_blank_above && lines[length].indent == lines.front().indent)
      ++length;
  return lines.first(length);
}

// How wide a column is: as its widest cell, of those that stick out by no more than this over the
// narrowest.
constexpr std::size_t most_over_narrowest = 24;

class Column {
 public:
  void take(std::size_t width) { widths_.push_back(width); }
  std::size_t width() const {
    if (widths_.empty()) return 0;
    auto const bound = *std::min_element(widths_.begin(), widths_.end()) + most_over_narrowest;
    std::size_t widest = 0;
    for (auto const width : widths_)
      if (width <= bound) widest = std::max(widest, width);
    return widest;
  }

 private:
  std::vector<std::size_t> widths_;
};

std::string padded(std::string text, std::size_t width) {
  auto const own = source::code_point_count(text);
  if (own < width) text.append(width - own, ' ');
  return text;
}

using Columns = std::map<std::pair<Shape, std::size_t>, Column>;

Columns columns_of(Run run) {
  Columns columns;
  for (auto const& woven : run) {
    if (woven.line == nullptr || woven.line->shape == Shape::none) continue;
    auto const& cells = woven.line->cells;
    for (std::size_t i = 0; i + 1 < cells.size(); ++i)
      columns[{woven.line->shape, i}].take(source::code_point_count(cells[i]));
  }
  return columns;
}

using Widths = std::map<std::pair<Shape, std::size_t>, std::size_t>;

// The last cell of a line is as wide as it is.
std::string in_columns(Line const& line, Widths& widths) {
  std::string text;
  for (std::size_t i = 0; i + 1 < line.cells.size(); ++i)
    text += padded(line.cells[i], widths[{line.shape, i}]) + " ";
  return text + line.cells.back();
}

bool is_drawing(Line const& line) { return line.shape == Shape::row || line.shape == Shape::level; }

// Comments behind lines that go on below stay where those end.
void put_comments(Run run, std::vector<std::string>& texts) {
  auto const is_behind = [&](std::size_t i) {
    return run[i].line != nullptr && !run[i].comment.empty();
  };
  auto const is_one_line = [&](std::size_t i) { return texts[i].find('\n') == std::string::npos; };
  Column column;
  for (std::size_t i = 0; i < run.size(); ++i)
    if (is_behind(i) && is_one_line(i)) column.take(source::code_point_count(texts[i]));
  auto const width = column.width();
  for (std::size_t i = 0; i < run.size(); ++i) {
    if (!is_behind(i)) continue;
    if (is_one_line(i)) texts[i] = padded(std::move(texts[i]), width);
    texts[i] += "  " + run[i].comment;
  }
}

std::vector<std::string> texts_of(Run run) {
  Widths widths;
  for (auto const& [key, column] : columns_of(run)) widths[key] = column.width();
  std::vector<std::string> texts;
  for (auto const& woven : run) {
    std::string const indent(woven.indent, ' ');
    if (woven.line == nullptr)
      texts.push_back(indent + woven.comment);
    else if (is_drawing(*woven.line))
      texts.push_back(indent + in_columns(*woven.line, widths));
    else
      texts.push_back(broken(in_columns(*woven.line, widths), woven.indent));
  }
  put_comments(run, texts);
  return texts;
}

}  // namespace

std::string aligned(std::vector<WovenLine> const& lines) {
  std::string out;
  for (Run rest(lines); !rest.empty();) {
    auto const run = first_run(rest);
    if (run.front().has_blank_above) out += '\n';
    for (auto const& text : texts_of(run)) out += text + '\n';
    rest = rest.subspan(run.size());
  }
  return out;
}

}  // namespace leat::syntax
