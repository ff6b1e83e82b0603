#pragma once
#include <functional>
#include <optional>
#include <utility>
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/explore/explored.hpp"

namespace leat::explore {

// How the cells are arranged after an event: by which setting, from which tick on. With delays an
// event brings several, one after the other.
struct Phase {
  int tick = 0;  // since the event
  Setting setting;
  auto operator<=>(Phase const&) const = default;
};

// What becomes of bodies that are inside while the cells change after one event (model section 5).
//
// The water is stepped from the settled field before the event through every phase. A body can be
// at every position of its trip when the event comes, and where it can be is followed step by step:
// in one water step it falls as far as it falls and makes at most as many other moves as the
// fastest water would take it cells meanwhile, one begun before among them: by the standard numbers
// half a cell, so one move. Where a phase lasts longer than its water moves and than the longest
// trip in it, the bodies that could leave have left, and others have entered.
// Whatever a body then meets in the last settled water is its outcome. So no danger is missed; one
// may be named that needs an unlikely moment.
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

// How long until bodies have left, in ticks, by inlet and profile (inlet * profiles + profile):
// upper estimates; none where some body may never leave.
using Clearing = std::vector<std::optional<int>>;

// One change of the cells: from one water through the same phases, wherever that happens.
struct Switching {
  std::uint32_t water = 0;  // before the event; index into Histories::waters
  std::vector<Phase> phases;
  // Where it happens: a node of the histories and the event (an input's index), nearest first.
  std::vector<std::pair<std::uint32_t, std::size_t>> occurrences;
  std::vector<Danger> dangers;
  Clearing clearing;  // from the event on, of the bodies that were inside then
};

struct SwitchingBudget {
  std::size_t most_switchings = 2'000;
  std::size_t most_occurrences = 1'000'000;
  long most_ticks = 2'000'000;  // of the logic, in all
};

struct Switchings {
  std::vector<Switching> all;
  bool is_complete = false;  // false: the budget ran out, or the histories were not followed
};

// The longer of two times; without a bound is longer than any.
std::optional<int> longer(std::optional<int>, std::optional<int>);
// The longest of them.
std::optional<int> longest(Clearing const&);

// Every change of the cells that an event can bring, each once. Cost: one settling for each phase,
// with one look at every position of every body for each water step.
// `progress` is told after each, how many are done and how many there are.
Switchings switchings(Explored const&, SwitchingBudget const& = {},
                      std::function<void(std::size_t, std::size_t)> const& progress = {});

}  // namespace leat::explore
