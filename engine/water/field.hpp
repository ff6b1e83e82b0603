#pragma once
#include <cstdint>
#include <vector>

#include "engine/model/arrangement.hpp"

// The water of every cell at one moment (model section 2).
namespace leat::water {

using model::Cell;

// dry, a flow (its strength), falling, or a source (placed or formed).
using State = std::uint8_t;
inline constexpr State dry = 0, falling = 254, source = 255;

// One state per cell id, rim included; the rim is always dry.
using Field = std::vector<State>;

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
