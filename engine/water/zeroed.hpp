#pragma once
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <memory>
#include <new>
#include <type_traits>

#include "engine/large_array.hpp"

namespace leat::water {

// An array that is all zero and costs only where it is touched: the system hands out zero pages
// when they are first used.
template <class Item>
class Zeroed {
 public:
  static_assert(std::is_trivially_copyable_v<Item>);
  explicit Zeroed(std::size_t count) : memory_(std::calloc(count + 1, sizeof(Item))) {
    if (!memory_) throw std::bad_alloc();
    expect_filling(memory_.get(), count * sizeof(Item));
    auto const start = reinterpret_cast<std::uintptr_t>(memory_.get());
    auto const aligned = (start + alignof(Item) - 1) / alignof(Item) * alignof(Item);
    first_ = reinterpret_cast<Item*>(aligned);
  }
  Item& operator[](std::size_t i) { return first_[i]; }
  Item const& operator[](std::size_t i) const { return first_[i]; }

 private:
  struct Free {
    void operator()(void* memory) const { std::free(memory); }
  };
  std::unique_ptr<void, Free> memory_;
  Item* first_;
};

}  // namespace leat::water
