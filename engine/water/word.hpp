#pragma once
#include <array>
#include <cstddef>
#include <cstdint>

// Answers of yes or no, many of them worked on at once.
namespace leat::water {

using Word = std::uint64_t;
inline constexpr int word_bits = 64;
inline constexpr Word all_bits = ~Word{0};

// The lowest `count` bits.
constexpr Word low_bits(int count) {
  return count >= word_bits ? all_bits : (Word{1} << count) - 1;
}

// Four words under one another. What is asked of a word can be asked of a block, and the compiler
// answers it with as wide instructions as it has.
struct Block {
  static constexpr std::size_t height = 4;
  std::array<Word, height> rows;

  constexpr explicit operator bool() const { return (rows[0] | rows[1] | rows[2] | rows[3]) != 0; }
  constexpr Block& operator|=(Block const& other) { return *this = *this | other; }
  constexpr Block& operator^=(Block const& other) { return *this = *this ^ other; }
  constexpr Block& operator&=(Block const& other) { return *this = *this & other; }
  friend constexpr Block operator|(Block const& a, Block const& b) {
    return by_row([&](std::size_t row) { return a.rows[row] | b.rows[row]; });
  }
  friend constexpr Block operator&(Block const& a, Block const& b) {
    return by_row([&](std::size_t row) { return a.rows[row] & b.rows[row]; });
  }
  friend constexpr Block operator^(Block const& a, Block const& b) {
    return by_row([&](std::size_t row) { return a.rows[row] ^ b.rows[row]; });
  }
  friend constexpr Block operator~(Block const& a) {
    return by_row([&](std::size_t row) { return ~a.rows[row]; });
  }
  friend constexpr Block operator<<(Block const& a, int bits) {
    return by_row([&](std::size_t row) { return a.rows[row] << bits; });
  }
  friend constexpr Block operator>>(Block const& a, int bits) {
    return by_row([&](std::size_t row) { return a.rows[row] >> bits; });
  }
  bool operator==(Block const&) const = default;

  template <class Of>
  static constexpr Block by_row(Of of) {
    return {{of(0), of(1), of(2), of(3)}};
  }
};

// The words of some places one by one: a word is its own only row.
constexpr Word row_of(Word word, std::size_t) { return word; }
constexpr Word row_of(Block const& block, std::size_t row) { return block.rows[row]; }

template <class Places>
constexpr Places any(std::array<Places, 4> const& of) {
  return of[0] | of[1] | of[2] | of[3];
}

// Where at least `count` of the four are set, place by place; nowhere for more than four.
template <class Places>
constexpr Places at_least(int count, std::array<Places, 4> const& of) {
  auto const& [a, b, c, d] = of;
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
      return count <= 0 ? ~Places{} : Places{};
  }
}

}  // namespace leat::water
