#include "engine/findings/families.hpp"

namespace leat::findings {

std::vector<Sighting> body_spills(Passage const& passage) {
  std::vector<Sighting> seen;
  if (!passage.outcome.spills) return seen;
  auto const& graph = passage.graph;
  for (std::uint32_t from = 0; from < graph.size(); ++from) {
    for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s) {
      if (graph.ends[graph.steps[s].to] != body::End::spill) continue;
      seen.push_back({FindingKind::body_spill, {graph.positions[from].feet}, {}, 0, 0, {}});
      break;
    }
  }
  return seen;
}

}  // namespace leat::findings
