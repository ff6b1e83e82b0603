#pragma once
#include <vector>

#include "lang/check/reading.hpp"

namespace leat::check {

// The extents of a junction and its levels from the lowest up.
struct Shape {
  bool is_sound = false;  // the extents are known, and every row and level fits them
  int width = 0, depth = 0;
  std::vector<syntax::LevelDeclaration const*> levels;  // by z

  int height() const { return static_cast<int>(levels.size()); }
};

// Extents past these are refused before anything is allocated for them.
inline constexpr int most_across = 2000;
inline constexpr int most_levels = 512;
inline constexpr long most_cells = 64'000'000;

// Reports levels that are missing, repeated or too many, and rows and levels of unequal size. The
// size that most rows have is taken for the one that was meant, so that one faulty row is one
// fault.
Shape read_shape(Reading const&, syntax::JunctionDeclaration const&);

}  // namespace leat::check
