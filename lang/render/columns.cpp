#include "lang/render/columns.hpp"

#include <utf8proc.h>

#include <algorithm>

#include "lang/source/code_point.hpp"

namespace leat::render {

int columns_of(char32_t c) {
  return std::max(0, utf8proc_charwidth(static_cast<utf8proc_int32_t>(c)));
}

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  for (std::size_t at = 0; at < text.size();) {
    if (text[at] >= ' ' && text[at] <= '~') {
      ++columns, ++at;
      continue;
    }
    auto const point = source::code_point_at(text, at);
    columns += point.length == 0 ? 1 : static_cast<std::size_t>(columns_of(point.value));
    at += std::max<std::size_t>(point.length, 1);
  }
  return columns;
}

std::string padded(std::string_view text, std::size_t columns) {
  std::string result(text);
  auto const width = columns_of(text);
  if (width < columns) result.append(columns - width, ' ');
  return result;
}

std::string padded_left(std::string_view text, std::size_t columns) {
  auto const width = columns_of(text);
  return std::string(width < columns ? columns - width : 0, ' ').append(text);
}

// Unicode's UAX 9, and its line and paragraph separators.
bool is_unruly(char32_t c) {
  return c == 0x61c || c == 0x200e || c == 0x200f || (c >= 0x2028 && c <= 0x202e) ||
         (c >= 0x2066 && c <= 0x2069);
}

std::string showable(std::string_view text) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    auto const point = source::code_point_at(text, at);
    bool const is_control = point.value < 0x20 || (point.value >= 0x7f && point.value < 0xa0);
    if (point.length == 0 || is_control || is_unruly(point.value)) {
      result += '?';
    } else {
      result += text.substr(at, point.length);
    }
    at += std::max<std::size_t>(point.length, 1);
  }
  return result;
}

std::string wrapped(std::string_view words, std::size_t columns, std::size_t indent) {
  std::string result;
  std::size_t used = 0;
  while (!words.empty()) {
    auto const end = std::min(words.find(' '), words.size());
    auto const word = words.substr(0, end);
    words.remove_prefix(std::min(end + 1, words.size()));
    if (word.empty()) continue;
    auto const width = columns_of(word);
    if (used > 0 && used + 1 + width > columns) {
      result.append("\n").append(indent, ' ');
      used = 0;
    } else if (used > 0) {
      result += ' ';
      ++used;
    }
    result += word;
    used += width;
  }
  return result;
}

std::string aligned(std::vector<std::vector<std::string>> const& rows, std::size_t indent) {
  std::vector<std::size_t> widths;
  for (auto const& row : rows) {
    widths.resize(std::max(widths.size(), row.size()), 0);
    for (std::size_t i = 0; i < row.size(); ++i)
      widths[i] = std::max(widths[i], columns_of(row[i]));
  }
  std::string result;
  for (auto const& row : rows) {
    std::string line(indent, ' ');
    for (std::size_t i = 0; i < row.size(); ++i) line += padded(row[i], widths[i] + 2);
    line.erase(line.find_last_not_of(' ') + 1);
    result += line + '\n';
  }
  return result;
}

}  // namespace leat::render
