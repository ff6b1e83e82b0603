#pragma once
#include <algorithm>
#include <cstdint>
#include <string_view>
#include <utility>

#include "engine/large_array.hpp"
#include "engine/model/arrangement.hpp"

// The water of every cell at one moment (model section 2).
namespace leat::water {

using model::Cell;

// dry, a flow (its strength), falling, or a source (placed or formed).
using State = std::uint8_t;
inline constexpr State dry = 0, falling = 254, source = 255;

// One state per cell id, rim included; the rim is always dry. A new one is dry all over, and costs
// what its wet parts cost: it is memory that is all zero, as dry is.
class Field {
 public:
  Field() = default;
  explicit Field(std::size_t cells) : size_(cells), memory_(zeroed_memory(cells)) {}
  Field(Field const& other) : Field(other.size()) {
    std::copy(other.begin(), other.end(), begin());
  }
  Field(Field&& other) noexcept
      : size_(std::exchange(other.size_, 0)), memory_(std::move(other.memory_)) {}
  Field& operator=(Field other) noexcept {
    std::swap(size_, other.size_);
    memory_.swap(other.memory_);
    return *this;
  }

  std::size_t size() const { return size_; }
  bool empty() const { return size_ == 0; }
  State* begin() { return static_cast<State*>(memory_.get()); }
  State* end() { return begin() + size_; }
  State const* begin() const { return static_cast<State const*>(memory_.get()); }
  State const* end() const { return begin() + size_; }
  State& operator[](std::size_t cell) { return begin()[cell]; }
  State const& operator[](std::size_t cell) const { return begin()[cell]; }
  // For looking equal fields up.
  std::string_view bytes() const { return {reinterpret_cast<char const*>(begin()), size_}; }

  friend bool operator==(Field const& a, Field const& b) {
    return std::equal(a.begin(), a.end(), b.begin(), b.end());
  }
  friend auto operator<=>(Field const& a, Field const& b) {
    return std::lexicographical_compare_three_way(a.begin(), a.end(), b.begin(), b.end());
  }

 private:
  std::size_t size_ = 0;
  ZeroedMemory memory_;
};

constexpr bool is_wet(State s) { return s != dry; }
constexpr bool is_flow(State s) { return is_wet(s) && s != falling && s != source; }

// Sources and falling water are as strong as Rule::source_strength says, flows 1 to one less, dry
// 0.
inline int strength(State s, model::Practice const& practice) {
  return s == falling || s == source ? practice[model::Rule::source_strength] : s;
}

// What a rule of the water may look at: the arrangement and the field before the step.
struct Moment {
  model::Arrangement const& arrangement;
  Field const& field;

  model::Grid const& grid() const { return arrangement.grid(); }
  bool is_wet(Cell c) const { return water::is_wet(field[c]); }
  bool is_source(Cell c) const { return field[c] == source; }
  bool may_enter(Cell c) const { return arrangement[c].water_enters; }
  int strength(Cell c) const { return water::strength(field[c], arrangement.practice()); }
};

}  // namespace leat::water
