#pragma once
#include <optional>
#include <vector>

#include "engine/works/supports.hpp"

namespace leat::works {

// Feet cells whose moves depend on the same few signals, or on fewer.
struct Region {
  Signals signals;                             // its support
  std::vector<std::vector<model::Cell>> feet;  // by profile, ascending
};

// The regions of a design: every feet cell at which a body can be, each in exactly one.
//
// Idea: feet cells of one support are one region; a region whose support lies in another's, with at
// most `most_more` signals less, is part of it, so that a cell of no signal is not run in thousands
// of combinations. In the order of their first cells. Cost: supports times supports.
std::vector<Region> regions_of(model::Design const&, Supports const&);

// The design with every control held as built that follows from other signals than the region's.
struct Held {
  model::Design design;
  std::vector<model::SignalId> signals;  // by its own id, the design's
};

// How controls stand as built, so that designs can be held there.
class AsBuilt {
 public:
  explicit AsBuilt(model::Design const&);  // which must outlive it

  // Whether every control is known: none is, where the logic as built never gets quiet, or where
  // one control follows from more than a machine holds.
  bool is_known() const { return is_known_; }
  // The region's water and moves are there as in the whole, in every history: what is held does not
  // reach them. Contract: is_known().
  Held held(Supports const&, Region const&) const;

 private:
  bool settled(model::ExpressionId);

  model::Design const* design_;
  std::map<model::ExpressionId, bool> of_control_;
  bool is_known_ = true;
};

}  // namespace leat::works
