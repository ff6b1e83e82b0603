#pragma once
#include <cstdint>
#include <span>
#include <vector>

#include "engine/body/surroundings.hpp"
#include "engine/water/word.hpp"

namespace leat::body {

using water::Word;

// Up to 64 waters of one design and one body in them, divided by what it feels where it is.
//
// Idea: a move asks for the materials and the water of some cells around the body and for nothing
// else. Where these are the same in several waters, the body has the same moves, and they are
// worked out in one of them. Which cells differ at all is found by going through all fields side by
// side, once; most cells do not, and cost nothing after that. Cost: one reading of the fields, and
// for each cell that differs near a body one reading of it in every water. Limit: cells that a rule
// reads only now and then divide waters always, so that two groups can have the same moves.
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
  void list_offsets();
  void find_differences();
  std::vector<Word> const& groups_of_cell(Cell);

  std::span<Surroundings const> waters_;
  std::vector<Offset> offsets_;         // of the cells that moves ask for
  std::vector<std::uint8_t> differs_;   // by cell, in water or material
  std::vector<std::uint32_t> divided_;  // by cell: one more than the index of its groups, or 0
  std::vector<std::vector<Word>> cell_groups_;
};

}  // namespace leat::body
