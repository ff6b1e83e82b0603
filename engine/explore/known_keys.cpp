#include "engine/explore/known_keys.hpp"

#include <bit>

namespace leat::explore {

void KnownKeys::widen(int bits) {
  constexpr int least_bits = 12;
  auto const allowed = std::max(least_bits, static_cast<int>(std::bit_width(16 * size_)) - 1);
  auto const wanted = std::min(bits, allowed);
  if (wanted <= dense_bits_) return;
  dense_bits_ = wanted;
  bits_.resize(std::max<std::size_t>((std::size_t{1} << wanted) / 64, 1));
  for (auto key : sparse_) {
    if (key == 0 || key >= dense_end()) continue;
    bits_[key >> 6] |= std::uint64_t{1} << (key & 63);
    --sparse_size_;
  }
  rehash(sparse_.size());
}

// Puts the keys that are not in the bit table into a table of that many slots, a power of two.
void KnownKeys::rehash(std::size_t slots) {
  std::vector<Key> old(slots);
  old.swap(sparse_);
  hash_shift_ = 64 - std::countr_zero(slots);
  for (auto key : old) {
    if (key >= dense_end()) sparse_[slot_of(key)] = key;
  }
}

}  // namespace leat::explore
