#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "lang/render/columns.hpp"
#include "lang/render/diagnostic_text.hpp"
#include "lang/render/spots.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

constexpr std::size_t tab_columns = 8;

// One sign of a source line as it is shown, and the number of its column in the text.
struct Shown {
  std::string text;
  std::size_t columns = 0, number = 0;
  bool is_in_span = false;
};

// The signs of the stretch that is shown. A line may be as long as a file: signs far from the span
// are never looked at.
struct Excerpt {
  std::vector<Shown> signs;
  bool has_more_before = false, has_more_after = false;
  std::size_t caret_column = 0;  // where the span begins, or would
};

Shown shown(std::string_view line, std::size_t at, std::size_t length, std::size_t column) {
  if (line[at] == '\t') {
    auto const blanks = tab_columns - column % tab_columns;
    return {std::string(blanks, ' '), blanks, 0, false};
  }
  auto text = showable(line.substr(at, length));
  auto const columns = columns_of(text);
  return {std::move(text), columns, 0, false};
}

// Whether the whole line can be shown; a line of very many bytes is not measured.
bool fits(std::string_view line, std::size_t most) {
  if (line.size() > 4 * most) return false;
  std::size_t columns = 0;
  for (std::size_t at = 0; at < line.size();) {
    auto const length = std::max<std::size_t>(source::code_point_at(line, at).length, 1);
    columns += shown(line, at, length, columns).columns;
    at += length;
  }
  return columns <= most;
}

// Where to begin so that `back` signs stand before the span, and how many do. A byte that is no
// UTF-8 is a sign of its own, as when reading forward.
std::pair<std::size_t, std::size_t> stretch_begin(std::string_view line, std::size_t begin,
                                                  std::size_t back) {
  std::size_t at = begin, steps = 0;
  for (; at > 0 && steps < back; ++steps) {
    std::size_t length = std::min<std::size_t>(at, 4);
    while (length > 1 && source::code_point_at(line, at - length).length != length) --length;
    at -= length;
  }
  return {at, steps};
}

// Cost: the signs shown, wherever in the line they stand.
Excerpt excerpt_of(std::string_view line, std::size_t begin, std::size_t end, std::size_t number,
                   std::size_t most) {
  bool const is_whole = fits(line, most);
  auto const [start, steps] = stretch_begin(line, begin, is_whole ? line.size() : most / 2);
  Excerpt excerpt{{}, start > 0, false};
  number -= std::min(number - 1, steps);
  std::size_t column = 0;
  for (auto at = start; at < line.size(); ++number) {
    auto const length = std::max<std::size_t>(source::code_point_at(line, at).length, 1);
    auto sign = shown(line, at, length, column);
    if (column + sign.columns > most) {
      excerpt.has_more_after = true;
      break;
    }
    sign.number = number;
    sign.is_in_span = at < end && at + length > begin;
    column += sign.columns;
    excerpt.signs.push_back(std::move(sign));
    at += length;
    if (at <= begin) excerpt.caret_column = column;
  }
  return excerpt;
}

// Column numbers at every tenth column of the text, each above its own sign.
std::string number_ruler(Excerpt const& excerpt) {
  std::string ruler;
  std::size_t column = 0;
  for (auto const& sign : excerpt.signs) {
    if (sign.number % 10 == 0 && ruler.size() <= column) {
      ruler.append(column - ruler.size(), ' ').append(std::to_string(sign.number) + " ");
    }
    column += sign.columns;
  }
  ruler.erase(ruler.find_last_not_of(' ') + 1);
  return ruler;
}

std::string caret_line(Excerpt const& excerpt) {
  std::string line;
  bool is_any = false;
  for (auto const& sign : excerpt.signs) {
    line.append(std::max<std::size_t>(sign.columns, sign.is_in_span ? 1 : 0),
                sign.is_in_span ? '^' : ' ');
    is_any = is_any || sign.is_in_span;
  }
  if (!is_any) return std::string(excerpt.caret_column, ' ') + "^";
  line.erase(line.find_last_not_of(' ') + 1);
  return line;
}

}  // namespace

std::string source_excerpt(source::SourceText const& text, source::Span span, std::size_t indent,
                           Look look, std::size_t most) {
  auto const [at, line, begin, end] = span_in_line(text, span);
  auto const excerpt = excerpt_of(line, begin, end, at.column, most);
  auto const number = std::to_string(at.line);
  std::string const blanks(indent + number.size() + 2, ' ');
  std::string result;
  if (excerpt.has_more_before || excerpt.has_more_after) {
    result += blanks + painted(look, Role::quiet, "column " + number_ruler(excerpt)) + "\n";
  }
  std::string const before = excerpt.has_more_before ? "...    " : "";
  bool const is_cut = excerpt.has_more_before || excerpt.has_more_after;
  std::string const shift(is_cut && before.empty() ? 7 : 0, ' ');
  result += std::string(indent, ' ') + painted(look, Role::quiet, number) + "  " + before + shift;
  for (auto const& sign : excerpt.signs) result += sign.text;
  if (excerpt.has_more_after) result += " ...";
  result += "\n" + blanks + std::string(before.size() + shift.size(), ' ') +
            painted(look, Role::error, caret_line(excerpt)) + "\n";
  return result;
}

}  // namespace leat::render
