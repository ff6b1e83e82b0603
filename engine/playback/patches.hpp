#pragma once
#include <compare>
#include <cstdint>
#include <map>
#include <vector>

namespace leat::playback {

// What is different afterwards: at which number which value stands.
struct Change {
  std::uint32_t at = 0, to = 0;
  auto operator<=>(Change const&) const = default;
};
using Patch = std::vector<Change>;  // ascending by `at`, each once

// From one list of values to another; a value that is no longer there becomes 0.
Patch difference(Patch const& before, Patch const& after);

// Numbers values in the order of their first coming, equal ones alike.
template <class Value>
class Numbered {
 public:
  std::uint32_t number(Value value) {
    auto const next = static_cast<std::uint32_t>(values_.size());
    auto const [entry, is_new] = numbers_.try_emplace(value, next);
    if (is_new) values_.push_back(std::move(value));
    return entry->second;
  }
  std::vector<Value> const& values() const { return values_; }
  std::vector<Value> take() { return std::move(values_); }

 private:
  std::map<Value, std::uint32_t> numbers_;
  std::vector<Value> values_;
};

}  // namespace leat::playback
