#include "lang/source/code_point.hpp"

#include <algorithm>
#include <array>

namespace leat::source {

namespace {

bool is_continuation(char byte) { return (static_cast<unsigned char>(byte) & 0xc0u) == 0x80u; }

std::size_t announced_length(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xc2 && lead <= 0xdf) return 2;
  if (lead >= 0xe0 && lead <= 0xef) return 3;
  if (lead >= 0xf0 && lead <= 0xf4) return 4;
  return 0;
}

}  // namespace

// By the definition of UTF-8 (RFC 3629): the lead byte announces the length, each following byte
// gives six bits, and a value that a shorter form could give, a surrogate or one past U+10FFFF is
// refused.
CodePoint code_point_at(std::string_view text, std::size_t offset) {
  auto const lead = static_cast<unsigned char>(text[offset]);
  auto const length = announced_length(lead);
  if (length <= 1) return {lead, length};
  if (text.size() - offset < length) return {lead, 0};
  static constexpr std::array<unsigned, 5> lead_bits{0, 0x7f, 0x1f, 0x0f, 0x07};
  static constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  char32_t value = lead & lead_bits[length];
  for (std::size_t i = 1; i < length; ++i) {
    char const byte = text[offset + i];
    if (!is_continuation(byte)) return {lead, 0};
    value = (value << 6) | (static_cast<unsigned char>(byte) & 0x3fu);
  }
  bool const is_surrogate = value >= 0xd800 && value <= 0xdfff;
  if (value < least[length] || is_surrogate || value > 0x10ffff) return {lead, 0};
  return {value, length};
}

std::size_t code_point_count(std::string_view text) {
  std::size_t count = 0;
  for (std::size_t at = 0; at < text.size(); ++count)
    at += std::max<std::size_t>(1, code_point_at(text, at).length);
  return count;
}

}  // namespace leat::source
