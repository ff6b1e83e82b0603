#pragma once
#include <optional>
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/explore/histories.hpp"

namespace leat::explore {

// What becomes of bodies that are inside while one change of the water runs (model section 5).
//
// The water is stepped from the settled field before the change to the one after it. A body can be
// at every position of its trip when the change comes, and where it can be is followed step by
// step: in one water step it falls as far as it falls and makes at most one other move, for no
// current carries a body a whole cell in five ticks. Whatever it then meets in the new settled
// water is its outcome. So no danger is missed; one may be named that needs an unlikely moment.
struct Danger {
  enum class Kind : std::uint8_t {
    misrouted,  // delivered at an outlet that neither the old water nor the new one selects
    trapped,    // at a cell where neither of them traps a body by itself
    spilled,    // though neither of them spills
    crushed,    // something solid took a cell of the body
  };
  Kind kind{};
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  std::optional<model::OutletId> outlet;  // misrouted
  std::vector<model::Cell> cells;         // feet cells, ascending; none where misrouted
};

// One change: its dangers, and how long until every body that was inside has left.
struct Switching {
  std::uint32_t change = 0;  // index into Histories::changes
  std::vector<Danger> dangers;
  // Upper estimate in ticks, from the event on; none if some body may never leave.
  std::optional<int> clearing;
};

Switching switching(model::Design const&, Histories const&, std::uint32_t change);

// How long after the last body has entered every one has left, under one settled water; none
// without bound. The guard time a builder must wire in before the next change.
std::optional<int> clearing_time(model::Design const&, Histories const&, std::uint32_t water);

}  // namespace leat::explore
