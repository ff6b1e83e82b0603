#pragma once
#include <cstddef>
#include <memory>
#include <vector>

namespace leat {

// Tells the system that an array with room for many items is about to be filled, so that it may
// back it by few large pages: where an array is filled once and left, a good part of the time goes
// into handing out small ones. A hint: it changes nothing but time, and where a system knows none
// it does nothing.
void expect_filling(void* begin, std::size_t bytes);

template <class Item>
void reserve_large(std::vector<Item>& items, std::size_t count) {
  items.reserve(count);
  expect_filling(items.data(), items.capacity() * sizeof(Item));
}

// Memory that is all zero. A large piece comes from the system as pages that cost only where they
// are touched: what an allocator keeps from before would have to be cleared, all of it.
struct ZeroedMemoryFree {
  std::size_t mapped = 0;  // bytes that came as pages; none: from the allocator
  void operator()(void*) const;
};
using ZeroedMemory = std::unique_ptr<void, ZeroedMemoryFree>;
ZeroedMemory zeroed_memory(std::size_t bytes);

}  // namespace leat
