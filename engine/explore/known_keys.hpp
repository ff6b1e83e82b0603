#pragma once
#include <algorithm>
#include <cstdint>
#include <vector>

namespace leat::explore {

// The keys met so far: a table of bits for small ones, a hash table with open addressing for the
// rest. The bit table grows with the number of keys, so that it takes at most two bytes a key.
class KnownKeys {
 public:
  using Key = std::uint64_t;

  // Keys below are in the bit table.
  Key dense_end() const { return Key{1} << dense_bits_; }
  bool is_known(Key key) const {
    return key < dense_end() ? (bits_[key >> 6] >> (key & 63) & 1u) != 0
                             : sparse_[slot_of(key)] == key;
  }

  // Contract: not known yet.
  void insert(Key key) {
    ++size_;
    if (key < dense_end()) {
      bits_[key >> 6] |= std::uint64_t{1} << (key & 63);
      return;
    }
    if (2 * ++sparse_size_ > sparse_.size()) rehash(2 * sparse_.size());
    sparse_[slot_of(key)] = key;
  }

  // Widens the bit table as far as the number of keys allows, to at most `bits` bits of a key.
  void widen(int bits);
  // Where a key of the hash table stands, and how many places there are.
  std::size_t slot_of(Key key) const {
    auto slot = key * 0x9e3779b97f4a7c15u >> hash_shift_;
    while (sparse_[slot] != key && sparse_[slot] != 0) slot = (slot + 1) & (sparse_.size() - 1);
    return slot;
  }
  std::size_t slot_count() const { return sparse_.size(); }

 private:
  void rehash(std::size_t slots);

  int dense_bits_ = 0;
  std::vector<std::uint64_t> bits_ = std::vector<std::uint64_t>(1);
  std::vector<Key> sparse_ = std::vector<Key>(16);  // 0: a free place
  int hash_shift_ = 60;
  std::size_t size_ = 0, sparse_size_ = 0;
};

}  // namespace leat::explore
