#pragma once
#include <cstdint>
#include <limits>
#include <vector>

#include "engine/body/route_graph.hpp"

namespace leat::body {

// Bodies in a million seconds, rounded to the nearest: a rate as a whole number.
using Rate = std::int64_t;
inline constexpr Rate no_limit = std::numeric_limits<Rate>::max();

// How many bodies a step passes, one close behind the other [choice]: the speed of the stream over
// what a body takes of it. Sideways that is its width, upward and downward its height. In water the
// stream has the speed to which the recurrence of the move tends (model section 7); out of the air
// every body starts from standstill, so the next one comes when it has fallen its own height. A
// step of several parts passes what its slowest passes. 0 where the move never gets anywhere.
Rate rate_of(Surroundings const&, Position from, Position to, MoveRule);

// A cell at which the way is narrowest, and how many pass there when as many as possible pass.
struct Narrow {
  Cell cell = model::no_cell;
  Rate rate = 0;
  bool operator==(Narrow const&) const = default;
};

// What can pass from the starts of a route graph to one outlet, if never a place is lost.
struct Throughput {
  Rate rate = 0;                  // no_limit where a body enters at the outlet
  std::vector<Narrow> narrowest;  // ascending; their rates sum to the rate
};

// Idea: the greatest flow over the cells that lead to the outlet (Boost.Graph's push-relabel: A. V.
// Goldberg, R. E. Tarjan, 1988). A cell passes as many bodies as the quickest of the steps that
// leave it, whatever they remember of their way; a step between two cells as many as its own move.
// The narrowest cells are those of the smallest cut nearest the starts: no more can pass them, and
// those before them have room to spare (L. R. Ford, D. R. Fulkerson, 1956). Cost: cells cubed at
// worst, about linear in practice. Limits: an upper estimate. Where bodies have a choice they make
// the best one; bodies that enter are as many as fit; beside each other, two bodies wider than a
// cell are not in each other's way; and what stands still somewhere blocks nothing.
Throughput throughput(Surroundings const&, RouteGraph const&, model::OutletId);

}  // namespace leat::body
