#pragma once
#include <vector>

#include "engine/water/bounds.hpp"

namespace leat::water {

// What the next state of a cell depends on: the water of these cells, and which material these have
// (of cells that change). Duplicates may be among them.
struct Reads {
  std::vector<Cell> water, material;
};

// The reads of a cell at every moment within the bounds; none where its water is always the same.
//
// Idea: the rules of step.cpp, with everything left out that the bounds have decided: cells of
// constant water; side neighbours that can never be stronger than some other one surely is; offers
// to what is surely wet, from what never spreads, or to a side that is always or never preferred.
// Of the ways to a hole only cells matter that are no further than the nearest sure one. What is
// left out cannot change the next state, so cells that are closed under reads change by themselves,
// whatever happens elsewhere. Cost: the cells within hole_search of a cell that may be offered to.
class Influence {
 public:
  explicit Influence(Bounds const& bounds) : bounds_(bounds) {}
  Reads reads(Cell) const;

  // The reads, constant cells among them, and why the others are left out: the neighbour whose
  // water is as strong for sure, or that surely offers; what lies under a neighbour whose water
  // only goes down; the ways by which a neighbour never prefers this side. Cells that are closed
  // under the grounds of their water should change by themselves even where all else, but for the
  // materials that are among the grounds, is solid.
  Reads grounds(Cell) const;

 private:
  class Changing;
  class All;
  template <class Kept>
  void read_forming(Cell, Kept&) const;
  template <class Kept>
  void read_sources_beside(Cell, Kept&) const;
  template <class Kept>
  void read_offer(Cell from, Kept&) const;
  template <class Kept>
  void read_ways(Cell from, Kept&) const;
  bool may_form(Cell) const;
  bool may_offer(Cell from) const;
  int sure_strength_beside(Cell) const;
  void ground_wetness(Cell, All&) const;

  Bounds const& bounds_;
};

}  // namespace leat::water
