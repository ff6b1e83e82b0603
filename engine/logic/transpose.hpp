#pragma once
#include <array>
#include <cstdint>

namespace leat::logic {

// Mirrors a matrix of 64 x 64 bits at its diagonal: bit j of row i becomes bit i of row j.
//
// Idea: swap the off-diagonal blocks of 32, then of 16, ... then single bits (Henry S. Warren,
// "Hacker's Delight", section on transposing a bit matrix). Cost: 6 passes of 32 exchanges.
inline void transpose(std::array<std::uint64_t, 64>& rows) {
  std::uint64_t mask = 0x00000000ffffffff;
  for (unsigned width = 32; width != 0; width >>= 1, mask ^= mask << width) {
    for (unsigned i = 0; i < 64; i = (i + width + 1) & ~width) {
      auto const swapped = ((rows[i] >> width) ^ rows[i + width]) & mask;
      rows[i] ^= swapped << width;
      rows[i + width] ^= swapped;
    }
  }
}

}  // namespace leat::logic
