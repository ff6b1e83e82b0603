#include "lang/render/picture/markup.hpp"

#include <algorithm>

#include "lang/render/columns.hpp"
#include "lang/source/code_point.hpp"

namespace leat::render {

namespace {

// What is a character, but none that an XML document may hold.
bool is_barred(char32_t c) { return c == 0xfffe || c == 0xffff; }

std::string_view entity_of(char c) {
  switch (c) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return {};
  }
}

}  // namespace

std::string escaped(std::string_view text) {
  auto const shown = showable(text);
  std::string result;
  for (std::size_t at = 0; at < shown.size();) {
    auto const point = source::code_point_at(shown, at);
    auto const piece = std::string_view(shown).substr(at, std::max<std::size_t>(point.length, 1));
    auto const entity = entity_of(piece.front());
    result += is_barred(point.value) ? "?" : entity.empty() ? piece : entity;
    at += piece.size();
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
