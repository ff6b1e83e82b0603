#pragma once
#include <array>
#include <cstdint>

// 64 answers of yes or no, worked on at once.
namespace leat::water {

using Word = std::uint64_t;
inline constexpr int word_bits = 64;
inline constexpr Word all_bits = ~Word{0};

// The lowest `count` bits.
constexpr Word low_bits(int count) {
  return count >= word_bits ? all_bits : (Word{1} << count) - 1;
}

constexpr Word any(std::array<Word, 4> const& of) { return of[0] | of[1] | of[2] | of[3]; }

// Where at least `count` of the four words are set, one by one; nowhere for more than four.
constexpr Word at_least(int count, std::array<Word, 4> const& of) {
  auto const [a, b, c, d] = of;
  switch (count) {
    case 1:
      return a | b | c | d;
    case 2:
      return (a & b) | (c & d) | ((a | b) & (c | d));
    case 3:
      return (a & b & (c | d)) | (c & d & (a | b));
    case 4:
      return a & b & c & d;
    default:
      return count <= 0 ? all_bits : 0;
  }
}

}  // namespace leat::water
