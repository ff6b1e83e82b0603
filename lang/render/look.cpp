#include "lang/render/look.hpp"

#include <array>

namespace leat::render {

namespace {

// Control sequences by role, in the order of the enumeration: a muted palette of the 256 public
// terminal colours that stays readable on dark and light ground.
constexpr std::array<std::string_view, 9> sequences{"",
                                                    "\x1b[1m",
                                                    "\x1b[38;5;244m",
                                                    "\x1b[1;38;5;167m",
                                                    "\x1b[1;38;5;136m",
                                                    "\x1b[38;5;67m",
                                                    "\x1b[38;5;65m",
                                                    "\x1b[38;5;31m",
                                                    "\x1b[1;38;5;133m"};

}  // namespace

std::string painted(Look look, Role role, std::string_view text) {
  auto const sequence = sequences[static_cast<std::size_t>(role)];
  if (!look.is_coloured || sequence.empty() || text.empty()) return std::string(text);
  return std::string(sequence).append(text).append("\x1b[0m");
}

}  // namespace leat::render
