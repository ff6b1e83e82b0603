#pragma once
#include <array>
#include <cstdint>

#include "engine/model/practice.hpp"
#include "engine/water/word.hpp"

namespace leat::water {

inline constexpr int most_hole_search =
    model::rule_table[static_cast<std::size_t>(model::Rule::hole_search)].most;
inline constexpr int most_strength =
    model::rule_table[static_cast<std::size_t>(model::Rule::source_strength)].most;

// 64 places of water side by side, one bit each: 64 cells of a row, or one cell in 64 arrangements.
//
// The strength of water is kept in planes: plane k says 'strength at least k'. The greatest
// strength around, less one, is then the union of the neighbours' planes k + 1. Falling water is as
// strong as a source, so it is what is in the highest plane and no source. All zero: dry, and
// nothing known.
template <int Most>  // no water is stronger
struct alignas(64) Patch {
  static constexpr std::size_t most = static_cast<std::size_t>(Most);

  // Together what is asked most often of patches above and beside.
  Word sources;
  Word spreading;                 // of strength 2 at least, and spreads sideways
  Word enter;                     // inside the drawing, and water may enter
  Word hole;                      // water may enter below; all of an open outside
  std::array<Word, most> strong;  // strong[k - 1]: strength at least k
  std::array<Word, 4> preferred;  // by side: whether it is among the preferred ones

  Word wet() const { return strong[0]; }
};

// What is seldom asked about a patch. near[d]: D is at most d.
struct Bed {
  Word placed;   // made of water
  Word bears;    // sources may form, going by the material below
  Word passage;  // water may enter, outside included
  std::array<Word, most_hole_search + 1> near;
};

struct Marks {
  bool is_made, has_placed, knows_sides;
  std::uint8_t known_near;  // the first so many of `near` are known
};

// What a patch stands on, read from the drawing once.
struct Ground {
  Word enter = 0, hole = 0, placed = 0, bears = 0, passage = 0;
};

template <class Patch>
void make(Patch& patch, Bed& bed, Marks& marks, Ground const& ground) {
  patch.enter = ground.enter;
  patch.hole = ground.hole;
  bed.placed = ground.placed;
  bed.bears = ground.bears;
  bed.passage = ground.passage;
  marks.has_placed = ground.placed != 0;
  marks.is_made = true;
}

}  // namespace leat::water
