#pragma once
#include <array>
#include <bit>
#include <cstdint>

#include "engine/water/field.hpp"
#include "engine/water/patch.hpp"

namespace leat::water {

using Bytes [[gnu::vector_size(16)]] = std::uint8_t;

// A byte for each of 16 bits, the lowest first, with all of its bits set or none.
inline Bytes as_bytes(std::uint16_t bits) {
  using Copies [[gnu::vector_size(16)]] = std::uint16_t;
  auto const copies = reinterpret_cast<Bytes>(Copies{} + bits);
  auto const eight_of_each = __builtin_shufflevector(copies, copies, 0, 0, 0, 0, 0, 0, 0, 0,  //
                                                     1, 1, 1, 1, 1, 1, 1, 1);
  constexpr Bytes own = {1, 2, 4, 8, 16, 32, 64, 128, 1, 2, 4, 8, 16, 32, 64, 128};
  return reinterpret_cast<Bytes>((eight_of_each & own) == own);
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
  std::array<Bytes, 4> all() const { return {sixteen(0), sixteen(16), sixteen(32), sixteen(48)}; }

 private:
  // From one place on.
  Bytes sixteen(int first) const {
    auto const bytes = [&](Word word) {
      return as_bytes(static_cast<std::uint16_t>(word >> first));
    };
    constexpr State above = falling >> digits << digits;
    auto states = bytes(full_) & above;
    for (std::size_t i = 0; i < digits; ++i) {
      states |= bytes(digits_[i]) & static_cast<State>(1u << i);
    }
    return states;
  }

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
