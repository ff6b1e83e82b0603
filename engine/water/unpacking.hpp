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

// The states of 64 places, one row of a patch, from the words of their binary digits. The strength
// of a place: its lowest digit is whether it is in an odd number of planes, the next whether it is
// in an odd number of every second one, and so on. What is in the highest plane falls, and has all
// digits but the lowest, or is a source and has that too.
template <class Patch>
class States {
 public:
  States(Patch const& patch, std::size_t row, int top) {
    auto const strong = [&](int k) {
      return row_of(patch.strong[static_cast<std::size_t>(k) - 1], row);
    };
    wet_ = strong(1);
    full_ = strong(top);
    for (std::size_t i = 0; i < digits; ++i) {
      auto const step = 1 << i;
      Word odd = 0;
      for (int k = step; k < top; k += step) odd ^= strong(k);
      digits_[i] = i == 0 ? (odd & ~full_) | row_of(patch.sources, row) : odd | full_;
    }
  }
  bool are_dry() const { return !wet_; }
  // Of eight places, from the group-th eight on.
  std::uint64_t eight(int group) const {
    constexpr std::uint64_t above = falling >> digits << digits;
    auto states = eight_bytes(full_, group) * above;
    for (std::size_t i = 0; i < digits; ++i) states |= eight_bytes(digits_[i], group) << i;
    return states;
  }

 private:
  static constexpr std::size_t digits = std::bit_width(Patch::most - 1);  // of flows
  Word wet_, full_;
  std::array<Word, digits> digits_;
};
static_assert((falling | 1) == 0xff && source == 0xff);

// Sets one place to a state.
template <class Patch>
void put(Patch& patch, typename Patch::Places const& place, State state, int top) {
  int const strength = state == falling || state == source ? top : state;
  for (int k = 0; k < strength; ++k) patch.strong[static_cast<std::size_t>(k)] |= place;
  if (state == source) patch.sources |= place;
}

}  // namespace leat::water
