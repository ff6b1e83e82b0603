#pragma once
#include <cstdint>
#include <vector>

#include "engine/model/design.hpp"
#include "engine/water/field.hpp"

namespace leat::water {

// What the materials of a fill have in common, whatever powers it, and what some of them have.
struct FillBounds {
  bool is_fixed = true;  // its material never changes
  bool may_enter = false, surely_enters = false;
  bool may_be_placed = false, is_placed = false;  // water is placed there: sometimes, always
  bool may_bear = false, surely_bears = false;    // sources may form above it
};

// Bounds on the water of every cell, in every setting of the controls and at every moment of every
// history once the design as built has settled.
//
// Idea: an upper and a lower field, each found from below, that no step of the water can leave.
// Upper: whoever may enter has the strongest side neighbour less one, full strength under what may
// be wet and where a source may be placed or form. Every rule of intrinsic is in it, offers are
// taken as given, so a step from a field below it stays below it, and a cell that changes material
// starts dry or as a source. Lower: only cells that never change material. Placed water is there;
// below what is surely wet, or beside a side neighbour that is surely strong enough, surely spreads
// and surely prefers that side, a cell is wet in every field that rests, and stays wet as long as
// what it was concluded from stays: so the fresh field as built lies above it, and no step leaves
// it. Sides are preferred by bounds on D: a way through cells that water may ever enter, and one
// through cells that it can always enter and that never are sources.
// Cost: a few looks at each cell for each unit of strength. Limit: bounds, not the exact range; a
// field that never rests is bounded too, but nothing else is claimed of it.
class Bounds {
 public:
  explicit Bounds(model::Design const&);  // which must outlive it

  model::Design const& design() const { return *design_; }
  FillBounds const& fill(Cell c) const { return of_fill_[design_->fill_of[c]]; }
  int least(Cell c) const { return least_[c]; }
  int most(Cell c) const { return most_[c]; }
  bool is_surely_wet(Cell c) const { return least_[c] > 0; }
  bool may_be_wet(Cell c) const { return most_[c] > 0; }
  bool may_be_source(Cell c) const { return may_be_source_[c]; }
  bool is_surely_source(Cell c) const { return is_source_[c]; }
  // Its state is always the same.
  bool is_constant(Cell c) const {
    return least_[c] == most_[c] && may_be_source_[c] == is_source_[c];
  }
  int side_sources(Cell, bool surely) const;

  // Bounds on D of a cell that water may enter.
  struct Distance {
    int least = 0, most = 0;
  };
  Distance hole_distance(Cell) const;
  // Whether a side neighbour is never, or always, among those to which its neighbours could offer.
  bool may_be_asked(Cell c) const { return fill(c).may_enter && !fill(c).is_placed; }
  bool is_surely_asked(Cell c) const { return fill(c).surely_enters && !may_be_source_[c]; }
  // How often the cell prefers the side neighbour.
  enum class Preference : std::uint8_t { never, sometimes, always };
  Preference preference(Cell from, Cell asked) const;
  // Whether in every field that rests the cell offers water to the side neighbour.
  bool surely_offers(Cell from, Cell asked) const;

 private:
  class Agenda;
  void bound_fills();
  void rise_most();
  void rise_least();
  bool raise_most(Cell);
  bool raise_least(Cell);
  int search(Cell, bool surely) const;

  model::Design const* design_;
  int full_;  // the strength of a source
  std::vector<FillBounds> of_fill_;
  std::vector<std::uint8_t> least_, most_;
  std::vector<bool> may_be_source_, is_source_;
  mutable std::vector<std::int16_t> distance_;  // by 2 * cell, least then most; unknown below 0
};

}  // namespace leat::water
