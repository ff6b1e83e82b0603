#pragma once
#include <cstddef>
#include <cstdint>
#include <vector>

namespace leat::logic {

// A row of a truth table over k inputs: bit k-1-i is the value of input i, so that counting upward
// changes the last input fastest.
using Row = std::uint32_t;

// A set of rows, packed one bit each: 2^k bits. Sets combine only with sets over as many inputs.
class RowSet {
 public:
  static constexpr int most_inputs = 24;

  // Contract: 0 <= inputs <= most_inputs.
  explicit RowSet(int inputs, bool is_full = false);
  // The rows in which input `index` is on.
  static RowSet where_on(int inputs, int index);

  int inputs() const { return inputs_; }
  Row row_count() const { return Row{1} << inputs_; }
  bool contains(Row row) const { return (words_[row / 64] >> (row % 64) & 1u) != 0; }
  void insert(Row row) { words_[row / 64] |= std::uint64_t{1} << (row % 64); }
  std::size_t count() const;
  bool is_empty() const;
  bool is_full() const;
  // The smallest row; contract: not empty.
  Row first() const;
  // Whether some row is inside while the one that differs from it at input `index` alone is not.
  bool depends_on(int index) const;

  RowSet& operator&=(RowSet const&);
  RowSet& operator|=(RowSet const&);
  RowSet& operator^=(RowSet const&);
  RowSet operator~() const;
  friend RowSet operator&(RowSet a, RowSet const& b) { return a &= b; }
  friend RowSet operator|(RowSet a, RowSet const& b) { return a |= b; }
  friend RowSet operator^(RowSet a, RowSet const& b) { return a ^= b; }
  bool operator==(RowSet const&) const = default;

  // The rows in which the first input is off (or on), as a set over the other inputs.
  // Contract: at least one input.
  RowSet half(bool is_on) const;

 private:
  void clear_unused_bits();
  int inputs_;
  std::vector<std::uint64_t> words_;
};

}  // namespace leat::logic
