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

// Places of water, one bit each: 64 cells of each of four rows, or one cell in 64 arrangements.
//
// The strength of water is kept in planes: plane k says 'strength at least k'. The greatest
// strength around, less one, is then the union of the neighbours' planes k + 1. Falling water is as
// strong as a source, so it is what is in the highest plane and no source. All zero: dry, and
// nothing known.
template <class Of, int Most>  // no water is stronger
struct alignas(64) Patch {
  using Places = Of;
  static constexpr std::size_t most = static_cast<std::size_t>(Most);

  // In the order that they are asked together: of patches above and below, beside, of its own.
  Places sources;
  std::array<Places, most> strong;  // strong[k - 1]: strength at least k
  Places spreading;                 // of strength 2 at least, and spreads sideways
  std::array<Places, 4> preferred;  // by side: whether it is among the preferred ones

  Places wet() const { return strong[0]; }
};

struct Marks {
  bool has_placed, knows_bears, knows_sides;
  bool sees_sources;        // some of its places may have a source beside them
  std::uint8_t known_near;  // for so many distances from 0 on it is known where D is at most that
};

}  // namespace leat::water
