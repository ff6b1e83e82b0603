#include "lang/check/loops.hpp"

#include <algorithm>

namespace leat::check {

// Loops without items have empty ranges, which do not tell what they lie in; their places in the
// text do.
LoopLayout::LoopLayout(std::vector<syntax::Loop> const& loops, std::size_t item_count)
    : after_(loops.size(), loops.size()), around_(item_count, loops.size()) {
  std::vector<std::size_t> open;
  for (std::size_t at = 0; at < loops.size(); ++at) {
    for (; !open.empty() && loops[open.back()].whole.end <= loops[at].span.begin; open.pop_back())
      after_[open.back()] = at;
    open.push_back(at);
    // Inner loops come later and write over what the outer ones wrote.
    std::fill(around_.begin() + static_cast<std::ptrdiff_t>(loops[at].begin),
              around_.begin() + static_cast<std::ptrdiff_t>(loops[at].end), at);
  }
}

}  // namespace leat::check
