#pragma once
#include <array>
#include <bit>
#include <cstring>

#include "engine/water/field.hpp"
#include "engine/water/patch.hpp"

namespace leat::water {

// For every byte its bits as eight bytes of 0 or 1, the lowest first.
inline constexpr auto bits_as_bytes = [] {
  std::array<std::array<std::uint8_t, 8>, 256> table{};
  for (std::size_t byte = 0; byte < 256; ++byte) {
    for (std::size_t bit = 0; bit < 8; ++bit) {
      table[byte][bit] = static_cast<std::uint8_t>(byte >> bit & 1);
    }
  }
  return table;
}();

inline std::uint64_t eight_bytes(Word word, int group) {
  std::uint64_t bytes;
  std::memcpy(&bytes, bits_as_bytes[word >> (8 * group) & 0xff].data(), sizeof bytes);
  return bytes;
}

// The states of 64 places, one row of a patch. The strength of a place in binary digits: the lowest
// is whether it is in an odd number of planes, the next whether it is in an odd number of every
// second one, and so on. The digits are added up as numbers of one byte each; in the highest plane
// water is a source or falls.
class States {
 public:
  template <class Patch>
  States(Patch const& patch, std::size_t row, int top) : sources_(row_of(patch.sources, row)) {
    auto const strong = [&](int k) {
      return row_of(patch.strong[static_cast<std::size_t>(k) - 1], row);
    };
    wet_ = strong(1);
    full_ = strong(top);
    for (int step = 1; step < top; step *= 2) {
      Word digit = 0;
      for (int k = step; k < top; k += step) digit ^= strong(k);
      digits_[static_cast<std::size_t>(count_++)] = digit & ~full_;
    }
  }
  // Of eight places, from the group-th eight on.
  std::uint64_t eight(int group) const {
    if (!(wet_ >> (8 * group) & 0xff)) return 0;
    std::uint64_t sum =
        eight_bytes(full_, group) * falling + eight_bytes(sources_, group) * (source - falling);
    for (int i = 0; i < count_; ++i) {
      sum += eight_bytes(digits_[static_cast<std::size_t>(i)], group) << i;
    }
    return sum;
  }

 private:
  Word wet_, full_, sources_;
  std::array<Word, 7> digits_{};
  int count_ = 0;
};

// Sets one place to a state.
template <class Patch>
void put(Patch& patch, typename Patch::Places const& place, State state, int top) {
  int const strength = state == falling || state == source ? top : state;
  for (int k = 0; k < strength; ++k) patch.strong[static_cast<std::size_t>(k)] |= place;
  if (state == source) patch.sources |= place;
}

}  // namespace leat::water
