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

// Four words under one another. What is asked of a word can be asked of a block, and is answered
// with as wide instructions as the compiler may use (see widely).
struct alignas(32) Block {
  using Rows [[gnu::vector_size(32)]] = Word;
  static constexpr std::size_t height = 4;
  Rows rows{};

  Block() = default;
  explicit Block(Rows const& of) : rows(of) {}
  Block(Word first, Word second, Word third, Word fourth) : rows{first, second, third, fourth} {}
  // Written out, so that blocks are handed over in memory: in registers it would depend on the
  // instructions that a function is compiled for, and functions that differ there meet.
  Block(Block const& other) : rows(other.rows) {}
  Block& operator=(Block const& other) {
    rows = other.rows;
    return *this;
  }

  explicit operator bool() const {
    auto const two =
        __builtin_shufflevector(rows, rows, 0, 1) | __builtin_shufflevector(rows, rows, 2, 3);
    auto const one = two | __builtin_shufflevector(two, two, 1, 0);
    return one[0] != 0;
  }
  Block& operator|=(Block const& other) { return *this = *this | other; }
  Block& operator^=(Block const& other) { return *this = *this ^ other; }
  Block& operator&=(Block const& other) { return *this = *this & other; }
  friend Block operator|(Block const& a, Block const& b) { return Block(a.rows | b.rows); }
  friend Block operator&(Block const& a, Block const& b) { return Block(a.rows & b.rows); }
  friend Block operator^(Block const& a, Block const& b) { return Block(a.rows ^ b.rows); }
  friend Block operator~(Block const& a) { return Block(~a.rows); }
  friend Block operator<<(Block const& a, int bits) { return Block(a.rows << bits); }
  friend Block operator>>(Block const& a, int bits) { return Block(a.rows >> bits); }
};

// The words of some places one by one: a word is its own only row.
constexpr Word row_of(Word word, std::size_t) { return word; }
inline Word row_of(Block const& block, std::size_t row) { return block.rows[row]; }

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
