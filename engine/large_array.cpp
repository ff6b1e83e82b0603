#include "engine/large_array.hpp"

#include <cstdint>

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

}  // namespace leat
