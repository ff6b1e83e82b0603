#include "engine/logic/row_set.hpp"

#include <algorithm>
#include <bit>

#include "engine/contract.hpp"

namespace leat::logic {

namespace {
std::size_t words_for(int inputs) {
  require(inputs >= 0 && inputs <= RowSet::most_inputs, "RowSet: too many inputs");
  return inputs <= 6 ? 1 : std::size_t{1} << (inputs - 6);
}
}  // namespace

RowSet::RowSet(int inputs, bool is_full)
    : inputs_(inputs), words_(words_for(inputs), is_full ? ~std::uint64_t{0} : 0) {
  clear_unused_bits();
}

RowSet RowSet::where_on(int inputs, int index) {
  require(index >= 0 && index < inputs, "RowSet::where_on: no such input");
  static constexpr std::uint64_t alternating[6] = {0xaaaaaaaaaaaaaaaa, 0xcccccccccccccccc,
                                                   0xf0f0f0f0f0f0f0f0, 0xff00ff00ff00ff00,
                                                   0xffff0000ffff0000, 0xffffffff00000000};
  RowSet result(inputs);
  auto const bit = inputs - 1 - index;
  for (std::size_t w = 0; w < result.words_.size(); ++w) {
    if (bit < 6) {
      result.words_[w] = alternating[bit];
    } else if ((w >> (bit - 6) & 1u) != 0) {
      result.words_[w] = ~std::uint64_t{0};
    }
  }
  result.clear_unused_bits();
  return result;
}

void RowSet::clear_unused_bits() {
  if (inputs_ < 6) words_[0] &= (std::uint64_t{1} << row_count()) - 1;
}

std::size_t RowSet::count() const {
  std::size_t total = 0;
  for (auto word : words_) total += static_cast<std::size_t>(std::popcount(word));
  return total;
}

bool RowSet::is_empty() const {
  return std::all_of(words_.begin(), words_.end(), [](auto word) { return word == 0; });
}

bool RowSet::is_full() const { return (~*this).is_empty(); }

Row RowSet::first() const {
  for (std::size_t w = 0; w < words_.size(); ++w) {
    if (words_[w] != 0)
      return static_cast<Row>(w * 64) + static_cast<Row>(std::countr_zero(words_[w]));
  }
  throw ContractBroken("RowSet::first: the set is empty");
}

bool RowSet::depends_on(int index) const {
  require(index >= 0 && index < inputs_, "RowSet::depends_on: no such input");
  auto const bit = inputs_ - 1 - index;
  if (bit >= 6) {
    auto const apart = std::size_t{1} << (bit - 6);
    for (std::size_t w = 0; w < words_.size(); ++w) {
      if ((w & apart) == 0 && words_[w] != words_[w | apart]) return true;
    }
    return false;
  }
  auto const few = std::min(inputs_, 6);
  auto const off = ~where_on(few, few - 1 - bit).words_[0];
  return std::any_of(words_.begin(), words_.end(),
                     [&](auto word) { return ((word ^ word >> (1 << bit)) & off) != 0; });
}

RowSet& RowSet::operator&=(RowSet const& other) {
  require(inputs_ == other.inputs_, "RowSet: sets over different inputs");
  for (std::size_t w = 0; w < words_.size(); ++w) words_[w] &= other.words_[w];
  return *this;
}

RowSet& RowSet::operator|=(RowSet const& other) {
  require(inputs_ == other.inputs_, "RowSet: sets over different inputs");
  for (std::size_t w = 0; w < words_.size(); ++w) words_[w] |= other.words_[w];
  return *this;
}

RowSet& RowSet::operator^=(RowSet const& other) {
  require(inputs_ == other.inputs_, "RowSet: sets over different inputs");
  for (std::size_t w = 0; w < words_.size(); ++w) words_[w] ^= other.words_[w];
  return *this;
}

RowSet RowSet::operator~() const {
  auto result = *this;
  for (auto& word : result.words_) word = ~word;
  result.clear_unused_bits();
  return result;
}

// The first input is the highest bit of a row, so its two halves are the two halves of the bits.
RowSet RowSet::half(bool is_on) const {
  require(inputs_ >= 1, "RowSet::half: no input to split on");
  RowSet result(inputs_ - 1);
  if (inputs_ <= 6) {
    result.words_[0] = is_on ? words_[0] >> result.row_count() : words_[0];
    result.clear_unused_bits();
    return result;
  }
  auto const from = words_.begin() + (is_on ? static_cast<std::ptrdiff_t>(words_.size() / 2) : 0);
  std::copy_n(from, result.words_.size(), result.words_.begin());
  return result;
}

}  // namespace leat::logic
