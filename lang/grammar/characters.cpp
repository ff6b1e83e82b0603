#include "lang/grammar/characters.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <cstring>
#include <string_view>

#include "lang/source/code_point.hpp"

namespace leat::grammar {

namespace {

source::CodePoint character_at(char const* at, char const* end) {
  // A code point has at most four bytes: the rest of the text need not be looked at.
  auto const length = std::min<std::ptrdiff_t>(4, end - at);
  return source::code_point_at({at, static_cast<std::size_t>(length)}, 0);
}

utf8proc_category_t category(char32_t character) {
  return utf8proc_category(static_cast<utf8proc_int32_t>(character));
}

bool is_letter(char32_t character) {
  auto const kind = category(character);
  return kind >= UTF8PROC_CATEGORY_LU && kind <= UTF8PROC_CATEGORY_LO;
}

}  // namespace

char const* line_end(char const* at, char const* end) {
  auto const found =
      static_cast<char const*>(std::memchr(at, '\n', static_cast<std::size_t>(end - at)));
  auto stop = found != nullptr ? found : end;
  if (stop != at && stop[-1] == '\r') --stop;
  return stop;
}

int glyph_length(char const* at, char const* end) {
  return std::max(1, static_cast<int>(character_at(at, end).length));
}

char const* name_end(char const* at, char const* end) {
  auto const begin = at;
  while (at != end) {
    if (is_letter_byte(*at) || (is_digit(*at) && at != begin)) {
      ++at;
      continue;
    }
    if (!is_wide_byte(*at)) break;
    auto const character = character_at(at, end);
    if (character.length == 0 || !is_letter(character.value)) break;
    at += character.length;
  }
  return at;
}

bool is_visible(char32_t character) {
  if (character == ' ') return true;
  auto const kind = category(character);
  return kind != UTF8PROC_CATEGORY_CN && kind < UTF8PROC_CATEGORY_ZS &&
         !(kind >= UTF8PROC_CATEGORY_MN && kind <= UTF8PROC_CATEGORY_ME);
}

// By the character's general category and its width in cells (Unicode, by way of utf8proc): a
// drawing lines up only if each mark fills exactly one cell of its row.
char const* unfitness(char32_t character) {
  constexpr std::string_view taken = "|#{}\"";
  if (character < 0x80 && taken.find(static_cast<char>(character)) != std::string_view::npos)
    return "has a meaning of its own in the language";
  auto const kind = category(character);
  if (kind >= UTF8PROC_CATEGORY_MN && kind <= UTF8PROC_CATEGORY_ME)
    return "joins the character before it";
  if (kind == UTF8PROC_CATEGORY_CN || kind >= UTF8PROC_CATEGORY_ZS) return "is not visible";
  auto const width = utf8proc_charwidth(static_cast<utf8proc_int32_t>(character));
  if (width == 2) return "is two cells wide";
  return width == 1 ? nullptr : "is not visible";
}

}  // namespace leat::grammar
