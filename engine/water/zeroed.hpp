#pragma once
#include <cstddef>
#include <cstdint>
#include <type_traits>

#include "engine/large_array.hpp"

namespace leat::water {

// An array that is all zero, which must be a state its items can begin with, and that costs only
// where it is touched.
template <class Item>
class Zeroed {
 public:
  static_assert(std::is_trivially_destructible_v<Item>);
  explicit Zeroed(std::size_t count)
      : memory_(zeroed_memory(count * sizeof(Item) + alignof(Item))) {
    auto const start = reinterpret_cast<std::uintptr_t>(memory_.get());
    auto const aligned = (start + alignof(Item) - 1) / alignof(Item) * alignof(Item);
    first_ = reinterpret_cast<Item*>(aligned);
  }
  Item& operator[](std::size_t i) { return first_[i]; }
  Item const& operator[](std::size_t i) const { return first_[i]; }

 private:
  ZeroedMemory memory_;
  Item* first_;
};

}  // namespace leat::water
