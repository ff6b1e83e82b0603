#pragma once
#include <cstddef>
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

}  // namespace leat
