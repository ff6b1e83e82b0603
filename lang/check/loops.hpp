#pragma once
#include <cstddef>
#include <vector>

#include "lang/syntax/document.hpp"

// How the loops of a block lie in one another and around its items.
namespace leat::check {

// Loops are numbered as they stand in the block's list: the outer ones first. The block itself
// counts as one more, `block()`. Cost: items and loops, times the depth of nesting.
class LoopLayout {
 public:
  LoopLayout(std::vector<syntax::Loop> const& loops, std::size_t item_count);

  std::size_t block() const { return after_.size(); }
  // The innermost loop around an item.
  std::size_t around(std::size_t item) const { return around_[item]; }
  // The first loop in the list that does not lie in this one.
  std::size_t after(std::size_t loop) const { return after_[loop]; }

 private:
  std::vector<std::size_t> after_, around_;
};

}  // namespace leat::check
