#pragma once
#include <array>
#include <bit>
#include <cstdint>

#include "engine/logic/row_set.hpp"

namespace leat::logic {

// A set of rows over at most 8 inputs, of a fixed size and without a store of its own: what the
// search for minimal covers copies and compares millions of times. Place p stands for input
// inputs - 1 - p: it is the bit of the row.
struct SmallRows {
  static constexpr int most_inputs = 8;
  std::array<std::uint64_t, 4> words{};

  bool operator==(SmallRows const&) const = default;
  bool is_empty() const { return (words[0] | words[1] | words[2] | words[3]) == 0; }
  bool contains(Row row) const { return (words[row / 64] >> (row % 64) & 1u) != 0; }
  void insert(Row row) { words[row / 64] |= std::uint64_t{1} << (row % 64); }
  int count() const {
    int total = 0;
    for (auto word : words) total += std::popcount(word);
    return total;
  }
  bool is_within(SmallRows const& other) const { return (*this & ~other).is_empty(); }
  bool meets(SmallRows const& other) const { return !(*this & other).is_empty(); }

  SmallRows& operator&=(SmallRows const& other) {
    for (std::size_t w = 0; w < 4; ++w) words[w] &= other.words[w];
    return *this;
  }
  SmallRows& operator|=(SmallRows const& other) {
    for (std::size_t w = 0; w < 4; ++w) words[w] |= other.words[w];
    return *this;
  }
  // The complement among all 256 rows: meet it with what is meant.
  SmallRows operator~() const { return {{~words[0], ~words[1], ~words[2], ~words[3]}}; }
  friend SmallRows operator&(SmallRows a, SmallRows const& b) { return a &= b; }
  friend SmallRows operator|(SmallRows a, SmallRows const& b) { return a |= b; }

  // Each row for the one that differs from it at a place.
  SmallRows flipped(int place) const {
    if (place == 6) return {{words[1], words[0], words[3], words[2]}};
    if (place == 7) return {{words[2], words[3], words[0], words[1]}};
    auto const on = where_on(place).words[0];
    auto const shift = 1 << place;
    SmallRows result;
    for (std::size_t w = 0; w < 4; ++w)
      result.words[w] = (words[w] & on) >> shift | (words[w] & ~on) << shift;
    return result;
  }

  // The rows of 256 in which the bit at a place is on.
  static SmallRows where_on(int place) {
    constexpr auto all = ~std::uint64_t{0};
    if (place == 6) return {{0, all, 0, all}};
    if (place == 7) return {{0, 0, all, all}};
    constexpr std::array<std::uint64_t, 6> alternating{0xaaaaaaaaaaaaaaaa, 0xcccccccccccccccc,
                                                       0xf0f0f0f0f0f0f0f0, 0xff00ff00ff00ff00,
                                                       0xffff0000ffff0000, 0xffffffff00000000};
    auto const word = alternating[static_cast<std::size_t>(place)];
    return {{word, word, word, word}};
  }

  template <class Visit>
  void each(Visit visit) const {
    for (std::uint32_t w = 0; w < 4; ++w) {
      for (auto rest = words[w]; rest != 0; rest &= rest - 1)
        visit(w * 64 + static_cast<Row>(std::countr_zero(rest)));
    }
  }
};

}  // namespace leat::logic
