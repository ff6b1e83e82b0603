#pragma once

namespace leat::water {

// Does work on blocks, with instructions as wide as a block where the processor has them. The rest
// of the program is compiled for every processor and takes a block in two halves. So the work is
// compiled once more, and must have all that it calls inside it (flatten): what is called outside
// is compiled for every processor. Both do the same; the wide one wants about 0.7 of the time.
#if defined(__x86_64__)
template <class Work>
[[gnu::target("avx2"), gnu::flatten]] auto do_with_whole_blocks(Work const& work) {
  return work();
}
#endif

template <class Work>
auto widely(Work const& work) {
#if defined(__x86_64__)
  if (__builtin_cpu_supports("avx2")) return do_with_whole_blocks(work);
#endif
  return work();
}

}  // namespace leat::water
