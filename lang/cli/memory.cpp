#include <mimalloc.h>

#include <new>

// Where the program's memory comes from. The library is written in C: where there is no more, its
// own operators end the program without a word, so that these throw in their place. What they give
// is freed by the library's.

namespace {

// Large pages: designs fill many small ones. Asked for before anything is allocated, since what is
// allocated first is most of what a short run needs.
[[gnu::constructor(101)]] void ask_for_large_pages() {
  mi_option_enable(mi_option_large_os_pages);
  mi_option_set(mi_option_eager_commit_delay, 0);
}

void* given(void* memory) {
  if (memory == nullptr) throw std::bad_alloc();
  return memory;
}

}  // namespace

void* operator new(std::size_t bytes) { return given(mi_malloc(bytes)); }
void* operator new[](std::size_t bytes) { return given(mi_malloc(bytes)); }

void* operator new(std::size_t bytes, std::align_val_t alignment) {
  return given(mi_malloc_aligned(bytes, static_cast<std::size_t>(alignment)));
}
void* operator new[](std::size_t bytes, std::align_val_t alignment) {
  return given(mi_malloc_aligned(bytes, static_cast<std::size_t>(alignment)));
}
