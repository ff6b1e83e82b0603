#pragma once
#include <vector>

#include "engine/judge.hpp"
#include "engine/works/regions.hpp"

namespace leat::works {

// A region with what was found of it: every water that its own signals bring about.
struct SolvedRegion {
  Region region;
  Judgement judged;                            // told of the design's cells; fields are not kept
  std::vector<model::SignalId> signals;        // of the judgement, as the design's
  std::vector<model::SignalId> own_variables;  // its variables, as the design's
  std::size_t promises = 0;                    // that it keeps
  // Its waters are followed through all histories and rest. Without it nothing is known of a body
  // that comes into the region.
  bool is_solved = false;
  bool is_met = false;  // some body comes into it
  // Regions of one number are alike, up to the symmetries of the square, and were judged once.
  std::uint32_t drawing = 0;
};

}  // namespace leat::works
