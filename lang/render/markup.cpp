#include "lang/render/markup.hpp"

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

std::string_view reference_of(char32_t c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case 0xfffe:  // characters, but none that an XML document may hold
    case 0xffff:
      return "?";
    default:
      return {};
  }
}

}  // namespace

std::string escaped(std::string_view text, std::string_view line_end) {
  std::string result;
  for (std::size_t at = 0; at < text.size();) {
    auto const point = source::code_point_at(text, at);
    auto const length = std::max<std::size_t>(point.length, 1);
    auto const reference = point.length == 0 ? std::string_view() : reference_of(point.value);
    if (point.value == '\n')
      result += line_end;
    else if (!reference.empty())
      result += reference;
    else
      result += showable(text.substr(at, length));
    at += length;
  }
  return result;
}

std::string shortened(std::string_view text, std::size_t columns) {
  if (columns_of(text) <= columns) return std::string(text);
  std::string result;
  std::size_t used = 0;
  for (std::size_t at = 0; at < text.size();) {
    auto const point = source::code_point_at(text, at);
    auto const piece = text.substr(at, std::max<std::size_t>(point.length, 1));
    used += columns_of(piece);
    if (used + 1 > columns) break;
    result += piece;
    at += piece.size();
  }
  return result + "…";
}

}  // namespace leat::render
