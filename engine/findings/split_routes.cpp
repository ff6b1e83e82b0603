#include <algorithm>

#include "engine/body/shape.hpp"
#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

// The positions that every way to `i` passes, from the first to `i` itself.
std::vector<std::uint32_t> passed_by_all(std::vector<std::uint32_t> const& dominators,
                                         std::uint32_t i) {
  std::vector<std::uint32_t> chain;
  for (; i != body::at_root; i = dominators[i]) chain.push_back(i);
  std::reverse(chain.begin(), chain.end());
  return chain;
}

}  // namespace

// The ways part at the last position that all ways to all outlets pass; where a body can enter by
// several cells there may be none, and the inlet itself is named.
std::vector<Sighting> split_routes(Passage const& passage) {
  auto const& outcome = passage.outcome;
  if (outcome.verdict != body::Verdict::split) return {};
  auto const dominators = body::immediate_dominators(passage.graph);
  std::optional<std::vector<std::uint32_t>> common;
  for (std::uint32_t i = 0; i < passage.graph.size(); ++i) {
    if (passage.graph.ends[i] != body::End::outlet) continue;
    auto const chain = passed_by_all(dominators, i);
    if (!common) common = chain;
    auto const parting = std::mismatch(common->begin(), common->end(), chain.begin(), chain.end());
    common->erase(parting.first, common->end());
  }
  auto const cells = common->empty()
                         ? passage.design.inlets[passage.inlet].cells
                         : std::vector<Cell>{passage.graph.positions[common->back()].feet};
  return {{FindingKind::split_route, cells, outcome.outlets, 0, 0, {}}};
}

}  // namespace leat::findings
