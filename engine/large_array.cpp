#include "engine/large_array.hpp"

#include <cstdint>
#include <cstdlib>
#include <new>

#if defined(__linux__)
#include <sys/mman.h>
#endif

namespace leat {

void expect_filling([[maybe_unused]] void* begin, [[maybe_unused]] std::size_t bytes) {
#if defined(__linux__)
  constexpr std::uintptr_t page = std::uintptr_t{1} << 21;
  auto const first = (reinterpret_cast<std::uintptr_t>(begin) + page - 1) / page * page;
  auto const end = (reinterpret_cast<std::uintptr_t>(begin) + bytes) / page * page;
  if (first < end) madvise(reinterpret_cast<void*>(first), end - first, MADV_HUGEPAGE);
#endif
}

ZeroedMemory zeroed_memory(std::size_t bytes) {
#if defined(__linux__)
  constexpr std::size_t large = std::size_t{1} << 20;
  if (bytes >= large) {
    auto* const pages =
        mmap(nullptr, bytes, PROT_READ | PROT_WRITE, MAP_PRIVATE | MAP_ANONYMOUS, -1, 0);
    if (pages == MAP_FAILED) throw std::bad_alloc();
    expect_filling(pages, bytes);
    return {pages, {bytes}};
  }
#endif
  auto* const memory = std::calloc(bytes, 1);
  if (!memory) throw std::bad_alloc();
  return {memory, {}};
}

void ZeroedMemoryFree::operator()(void* memory) const {
#if defined(__linux__)
  if (mapped > 0) {
    munmap(memory, mapped);
    return;
  }
#endif
  std::free(memory);
}

}  // namespace leat
