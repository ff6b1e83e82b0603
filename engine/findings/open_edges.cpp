#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

// Cells under `feet` down to the first that carries the body, or to the edge of the drawing.
int drop_under(Passage const& passage, Cell feet) {
  int depth = 0;
  while (passage.here.grid().is_inside(feet) && !passage.here.is_carried(feet)) {
    ++depth;
    feet = passage.here.grid().below(feet);
  }
  return depth;
}

}  // namespace

// A floor that ends at a drop, and water that runs over the edge with the body: where a sign should
// stop it.
std::vector<Sighting> open_edges(Passage const& passage) {
  auto const& graph = passage.graph;
  auto const& now = passage.here.moment();
  auto const wanted_from = passage.here.practice()[model::Rule::edge_drop];
  std::vector<Sighting> seen;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (graph.ends[i] != body::End::none) continue;
    auto const from = graph.positions[i].feet;
    if (!passage.here.are_feet_wet(from) || !passage.here.is_carried(from)) continue;
    for (auto s = graph.first_step[i]; s < graph.first_step[i + 1]; ++s) {
      auto const edge = graph.positions[graph.steps[s].to].feet;
      if (graph.steps[s].rule != body::MoveRule::push || !now.grid().is_inside(edge)) continue;
      bool const runs_over =
          passage.here.are_feet_wet(edge) && now.may_enter(now.grid().below(edge));
      auto const drop = drop_under(passage, edge);
      if (runs_over && drop >= wanted_from) {
        seen.push_back({FindingKind::open_edge, {edge}, {}, drop, wanted_from, {}});
      }
    }
  }
  return seen;
}

}  // namespace leat::findings
