#include "engine/explore/state_keys.hpp"

#include <bit>
#include <utility>

#include "engine/contract.hpp"

namespace leat::explore {

StateKeys::StateKeys(logic::Code first) : first_(first) {
  for (std::size_t bit = 0; bit < image_.size(); ++bit)
    image_[bit] = preimage_[bit] = std::uint64_t{1} << bit;
}

StateKeys::Key StateKeys::key_of(logic::Code code) const {
  Key key = 0;
  for (auto rest = code ^ first_; rest != 0; rest &= rest - 1)
    key ^= image_[static_cast<std::size_t>(std::countr_zero(rest))];
  return key;
}

logic::Code StateKeys::code_of(Key key) const {
  auto code = first_;
  for (; key != 0; key &= key - 1)
    code ^= preimage_[static_cast<std::size_t>(std::countr_zero(key))];
  return code;
}

// One elimination: a bit set above the span becomes the next coordinate, and clears the other bits
// set above. The inverse takes the same operations on its columns.
StateKeys::Step StateKeys::include(Key key) {
  require(!includes(key), "StateKeys::include: the key is in the span");
  Step step{std::countr_zero(key >> dimensions_) + dimensions_, dimensions_, 0};
  auto const above = key >> dimensions_ << dimensions_;
  step.cleared = step(above) ^ (Key{1} << step.to);
  for (auto& column : image_) column = step(column);
  auto const to = static_cast<std::size_t>(step.to);
  std::swap(preimage_[static_cast<std::size_t>(step.from)], preimage_[to]);
  for (auto rest = step.cleared; rest != 0; rest &= rest - 1)
    preimage_[to] ^= preimage_[static_cast<std::size_t>(std::countr_zero(rest))];
  ++dimensions_;
  return step;
}

}  // namespace leat::explore
