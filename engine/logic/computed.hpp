#pragma once
#include <cstdint>
#include <optional>
#include <vector>

namespace leat::logic {

// Results of an operation on up to three numbers, each remembered until another one needs its
// place. Cost: one look each; the memory is 16 bytes a place.
class Computed {
 public:
  explicit Computed(std::size_t places) : entries_(places) {}  // a power of two

  std::optional<std::uint32_t> find(std::uint32_t a, std::uint32_t b, std::uint32_t c) const {
    auto const& entry = entries_[place(a, b, c)];
    bool const is_it = entry.a == a && entry.b == b && entry.c == c;
    return is_it ? std::optional(entry.result) : std::nullopt;
  }
  void remember(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t result) {
    entries_[place(a, b, c)] = {a, b, c, result};
  }
  std::size_t places() const { return entries_.size(); }
  // Twice as many places.
  void grow() {
    auto const old = std::move(entries_);
    entries_ = std::vector<Entry>(2 * old.size());
    for (auto const& entry : old) {
      if (entry.c != unused) remember(entry.a, entry.b, entry.c, entry.result);
    }
  }

 private:
  static constexpr std::uint32_t unused = 0xffffffffu;  // no third number is that
  struct Entry {
    std::uint32_t a = 0, b = 0, c = unused, result = 0;
  };
  std::size_t place(std::uint32_t a, std::uint32_t b, std::uint32_t c) const {
    auto const mixed =
        (a * 0x9e3779b97f4a7c15u + b) * 0xc2b2ae3d27d4eb4fu + c * 0x165667b19e3779f9u;
    return (mixed ^ mixed >> 32) & (entries_.size() - 1);
  }
  std::vector<Entry> entries_;
};

}  // namespace leat::logic
