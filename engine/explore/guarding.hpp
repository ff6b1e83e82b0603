#pragma once
#include <optional>
#include <vector>

#include "engine/explore/switching.hpp"

namespace leat::explore {

// A danger of one change, over every state in which it threatens.
struct Threat {
  Danger danger;  // united by kind, inlet, profile and outlet
  RowSet rows{0};
  Example example;  // the nearest state
};

// One change of an input (in a works, of a wire: see works/islands.hpp) with all that it does to
// bodies inside, over every state it can happen in.
struct Guard {
  model::SignalId event = 0;
  bool goes_on = false;
  RowSet rows{0};  // before it, where it changes cells
  // Ticks to wait before it after the last body has entered, so that none is inside; none where a
  // body may never leave.
  std::optional<int> wait;
  // Ticks after it until every body that was inside has left; none where one may never leave.
  std::optional<int> clearing;
  std::vector<Threat> threats;
  Example example;  // the nearest state before it
};

// In the order of the inputs, first on, then off; changes that move no cell are left out. `trips`:
// by water, how long bodies take in it.
std::vector<Guard> guards(Explored const&, Switchings const&, std::vector<Clearing> const& trips);

}  // namespace leat::explore
