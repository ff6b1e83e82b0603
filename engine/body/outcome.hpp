#pragma once
#include "engine/body/route_graph.hpp"

namespace leat::body {

enum class Verdict : std::uint8_t { certain, split, doubtful, lost };

// What becomes of a body (model section 3, "Fairness").
struct Outcome {
  Verdict verdict = Verdict::lost;
  std::vector<model::OutletId> outlets;  // reached, ascending
  std::vector<bool> is_trapped;          // per position: R minus B, positions outside left out
  bool has_trap = false;
  bool spills = false;                 // some position is outside
  std::vector<std::uint32_t> hanging;  // positions with moves, none of them sure
};

Outcome outcome_of(RouteGraph const&);

}  // namespace leat::body
