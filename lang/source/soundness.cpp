#include "lang/source/soundness.hpp"

#include <algorithm>

#include "lang/source/code_point.hpp"

namespace leat::source {

namespace {

bool is_plain(char byte) {
  return ((byte >= ' ') & (byte < 0x7f)) | (byte == '\n') | (byte == '\t');
}

// The next byte that is not plain, or the end. Blocks are looked at whole: a compiler makes a few
// wide operations of each.
std::size_t after_plain(std::string_view text, std::size_t at) {
  constexpr std::size_t block = 64;
  for (bool is_all_plain = true; at + block <= text.size(); at += block) {
    for (std::size_t i = 0; i < block; ++i) is_all_plain &= is_plain(text[at + i]);
    if (!is_all_plain) break;
  }
  while (at < text.size() && is_plain(text[at])) ++at;
  return at;
}

std::optional<Unsoundness> judge(std::string_view text, std::size_t at, CodePoint point) {
  if (point.length == 0) return Unsoundness::not_utf8;
  if (point.value == 0) return Unsoundness::nul_byte;
  if (point.value == '\r' && at + 1 < text.size() && text[at + 1] == '\n') return std::nullopt;
  if (point.value < ' ' || (point.value >= 0x7f && point.value < 0xa0))
    return Unsoundness::control_character;
  return std::nullopt;
}

}  // namespace

std::optional<UnsoundPlace> find_unsoundness(std::string_view text) {
  if (text.size() > largest_text) return UnsoundPlace{Unsoundness::too_large, 0, 0, 1};
  std::optional<UnsoundPlace> found;
  for (auto at = after_plain(text, 0); at < text.size();) {
    auto const point = code_point_at(text, at);
    auto const length = std::max<std::size_t>(1, point.length);
    if (auto const kind = judge(text, at, point)) {
      if (!found) found = UnsoundPlace{*kind, at, length, 0};
      if (found->kind == *kind) ++found->count;
    }
    at = after_plain(text, at + length);
  }
  return found;
}

}  // namespace leat::source
