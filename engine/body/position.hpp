#pragma once
#include <cstdint>

#include "engine/model/grid.hpp"

namespace leat::body {

using model::Cell;
using model::Side;

// Where a body is, and what it remembers of its way (model appendix): the feet cell (lowest,
// northernmost, westernmost of its cells), the side to which it was carried, and the cells fallen,
// counted up to most_fallen.
struct Position {
  Cell feet = model::no_cell;
  Side carried_to = Side::none;
  std::uint8_t fallen = 0;
  auto operator<=>(Position const&) const = default;
};

inline constexpr int most_fallen = 4;

enum class MoveRule : std::uint8_t { fall, drift, sink, rise, push, climb };

struct Move {
  Position to;
  MoveRule rule = MoveRule::fall;
  bool is_sure = true;
};

// Why a position has no moves.
enum class End : std::uint8_t { none, outlet, spill, dry, still, pinned };

}  // namespace leat::body
