#pragma once
#include <vector>

#include "engine/body/outcome.hpp"
#include "engine/body/trail.hpp"

namespace leat::body {

// How a body's way can end: delivered, out of the drawing, at rest, or in a loop without a way out.
enum class EndingKind : std::uint8_t { outlet, spill, rest, loop };

struct Ending {
  EndingKind kind = EndingKind::rest;
  End end = End::none;                 // of the last position; none in a loop
  model::OutletId outlet = no_outlet;  // delivered: where
  std::vector<model::Cell> loop;       // loop: its feet cells, ascending
  Trail trail;                         // a shortest one to it
};

// Every ending once: each outlet reached (by id), each feet cell from which the body leaves the
// drawing, each feet cell at which it comes to rest, each loop without a way out; nearest first
// within a kind. Cost: one breadth-first search an ending.
std::vector<Ending> endings(RouteGraph const&);

}  // namespace leat::body
