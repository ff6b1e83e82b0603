#pragma once
#include <cstdint>
#include <span>
#include <unordered_map>
#include <vector>

#include "engine/body/surroundings.hpp"
#include "engine/water/word.hpp"

namespace leat::body {

using water::Word;

// Up to 64 waters of one design and one body in them, divided by what it feels where it is.
//
// Idea: a move asks for the materials and the water of some cells around the body and for nothing
// else. Where these are the same in several waters, the body has the same moves, and they are
// worked out in one of them. Which cells differ at all is found stretch by stretch where a body
// comes, all fields side by side; most cells do not, and cost nothing after that. Cost: one reading
// of those stretches, and for each cell that differs near a body one look at it in every water.
// Limit: cells that a rule reads only now and then divide waters always, so that two groups can
// have the same moves.
class Feel {
 public:
  // Contract: 1 to 64 waters, all of one design, seen by one body. They must outlive this.
  explicit Feel(std::span<Surroundings const> waters);

  Word all() const { return water::low_bits(static_cast<int>(waters_.size())); }
  // One of the waters of a group.
  Surroundings const& in(Word group) const;

  // The waters in groups, each water in one. In those of a group every move from every position
  // with these feet is the same, and so is all that Surroundings tells of them.
  std::vector<Word> groups(Cell feet);

 private:
  struct Offset {
    int x, y, z;
  };
  static constexpr std::size_t stretch = 64;  // cells, one after the other

  void list_offsets();
  void find_switched();
  bool differs(Cell);
  void read(std::size_t stretch_number);
  std::vector<Word> const& groups_of_cell(Cell);

  std::span<Surroundings const> waters_;
  std::vector<Offset> offsets_;            // of the cells that moves ask for
  std::vector<std::uint8_t> is_switched_;  // by fill: its material differs
  std::vector<std::uint8_t> is_read_;      // by stretch
  std::vector<std::uint8_t> differs_;      // by cell, in water or material, once it is read
  std::unordered_map<Cell, std::vector<Word>> cell_groups_;
};

}  // namespace leat::body
