#pragma once
#include <cstddef>
#include <optional>
#include <string_view>

// What must hold of a text's bytes before anything is read from them.
namespace leat::source {

// Larger texts are refused unread.
inline constexpr std::size_t largest_text = std::size_t{64} << 20;

enum class Unsoundness {
  too_large,
  nul_byte,
  not_utf8,
  control_character,  // any but the tab, the line feed, and the carriage return before one
};

struct UnsoundPlace {
  Unsoundness kind;
  std::size_t offset;  // of the first such byte
  std::size_t length;  // bytes concerned
  std::size_t count;   // how many of this kind the text holds
};

// Nothing, or the first thing that is wrong with the text's bytes. One pass, no memory.
std::optional<UnsoundPlace> find_unsoundness(std::string_view text);

}  // namespace leat::source
