#pragma once
#include <optional>
#include <vector>

#include "engine/logic/cone.hpp"
#include "engine/model/arrangement.hpp"
#include "engine/works/supports.hpp"

namespace leat::works {

// Feet cells whose moves depend on the same few signals, or on fewer, and cells whose water does.
struct Region {
  Signals signals;                             // its support
  std::vector<std::vector<model::Cell>> feet;  // by profile, ascending
  std::vector<model::Cell> wet;                // that water can be in, ascending
};

// The regions of a design: every feet cell at which a body can be, each in exactly one, and every
// cell that can be wet, by its surroundings.
//
// Idea: cells of one support are one region; a region whose support lies in another's small one,
// with at most `most_more` signals less, is part of it, so that there are not more regions than it
// takes; cells of no signal are one by themselves. (In large ones a wire may be all that switches
// the cells of one support, and then is one signal to them: logic/modules.hpp.) In the order of their first cells. Cost: supports times supports.
std::vector<Region> regions_of(model::Design const&, Supports const&);

// The design with every control held as built that follows from other signals than the region's,
// and without ports: bodies are followed over all regions. What is accepted under conditions of
// other signals is not accepted there.
//
// Why a region may be judged in it: let S be the cells whose support lies in the region's.
// - S is closed: what the next state of its cells depends on lies in S, or is constant, or is the
//   material of a cell that only the region's signals switch (Influence, within Bounds).
// - The bounds hold from the fresh water as built on. That water is the same in the whole and in
//   the held design, for as built both are one drawing.
// - So each event of the whole changes S as it does in the held design, or, where it is an event of
//   other signals, not at all: at rest nothing that S depends on moves. What each history of the
//   whole brings about in S, the history of the region's own events does, and the other way round
//   as far as the region's logic does not know what is promised never to come about.
// - A body's moves at the region's feet cells read S, constant water, and materials that the
//   region's signals switch (Supports::of_moves). So does what is said of the water of cells whose
//   surroundings have a support within the region's; elsewhere the held design tells nothing.
// What this does not show, and what is not claimed: anything of water that does not rest, of
// histories that were not followed to their end, and of fresh water in combinations other than as
// built, which comes about by building and not by switching.
struct Held {
  model::Design design;
  std::vector<model::SignalId> signals;  // by its own id, the design's
};

// How controls stand as built, so that designs can be held there.
class AsBuilt {
 public:
  explicit AsBuilt(model::Design const&);  // which must outlive it

  // Whether every control is known: none is, where the logic as built does not get quiet, or where
  // one control follows from more than a machine holds.
  bool is_known() const { return is_known_; }
  // The region's water and moves are there as in the whole, in every history: what is held does not
  // reach them. It stays until the next one is asked for, so that the cells are copied once.
  // Contract: is_known().
  Held const& held(Supports const&, Region const&);
  // Contract: is_known().
  model::Arrangement arrangement() const;

 private:
  bool settled(model::ExpressionId);

  model::Design const* design_;
  logic::Cones cones_;
  std::map<model::ExpressionId, bool> of_control_;
  Held held_;
  bool is_known_ = true;
  std::size_t rounds_left_ = std::size_t{1} << 20;  // until all controls are quiet
};

}  // namespace leat::works
