#pragma once
#include <map>
#include <optional>
#include <vector>

#include "engine/model/design.hpp"
#include "engine/water/bounds.hpp"

namespace leat::works {

// Inputs and memory, ascending.
using Signals = std::vector<model::SignalId>;
Signals united(Signals const&, Signals const&);
bool includes(Signals const& all, Signals const& some);

// On which inputs and memory the water of each cell depends, and the moves of a body at each feet
// cell, over all histories.
//
// Idea: the influence of water (water/influence.hpp) as a graph of cells; each signal is led from
// the cells that it switches along that graph. The cells of equal support and all that they read
// are then a system by itself: started as built, what happens in them follows from their own
// signals alone, whatever the others do meanwhile. Moves read the cells of the body, those beside,
// and those under it as far as it can fall in one move (body/moves.cpp). Cost: for each signal the
// cells that it reaches. Limit: an upper estimate.
class Supports {
 public:
  explicit Supports(model::Design const&);  // which must outlive it

  water::Bounds const& bounds() const { return bounds_; }
  Signals const& of_water(model::Cell c) const { return of_water_[c]; }
  Signals of_moves(model::Cell feet, model::Profile const&) const;
  // Of what is made of the cell and its neighbours, and of their water.
  Signals of_surroundings(model::Cell) const;
  // The cells whose material and water a body's moves at a feet cell can follow from.
  std::vector<model::Cell> read_by_moves(model::Cell feet, model::Profile const&) const;
  // What a fill's control follows from; empty where nothing switches it.
  Signals const& of_fill(model::FillId fill) const { return of_fill_[fill]; }
  // What an acceptance's condition follows from; empty where it has none.
  Signals const& of_acceptance(std::size_t acceptance) const { return of_acceptance_[acceptance]; }
  // Inputs and memory that any fill follows from.
  Signals const& all() const { return all_; }

  // The feet cells at which a body from one of the inlets can ever be, ascending: an upper
  // estimate, from where there may be water, and where a body may fit.
  std::vector<model::Cell> feet_cells(model::Profile const&) const;

 private:
  void lead_on(std::vector<std::vector<model::Cell>> const& read_by, model::SignalId,
               std::vector<model::Cell> const& from);
  template <class Visit>
  void each_column(model::Cell feet, model::Profile const&, bool is_beside, Visit) const;
  template <class Test>
  bool any_of_body(model::Cell feet, model::Profile const&, Test) const;
  bool may_fit(model::Cell feet, model::Profile const&) const;
  bool may_fall(model::Cell feet, model::Profile const&) const;
  std::vector<model::Cell> next_feet(model::Cell feet, model::Profile const&) const;

  model::Design const* design_;
  water::Bounds bounds_;
  std::vector<Signals> of_fill_, of_acceptance_, of_water_;
  Signals all_;
};

}  // namespace leat::works
