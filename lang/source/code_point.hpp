#pragma once
#include <cstddef>
#include <string_view>

// Reading UTF-8 one code point at a time.
namespace leat::source {

struct CodePoint {
  char32_t value = 0;
  std::size_t length = 0;  // bytes; 0: the bytes there are no code point
};

// The code point at `offset`, which lies inside the text. Overlong forms, surrogates, values past
// U+10FFFF and cut-off sequences are none.
CodePoint code_point_at(std::string_view text, std::size_t offset);

// Code points in the text; a byte that belongs to none counts as one.
std::size_t code_point_count(std::string_view text);

}  // namespace leat::source
