#include <algorithm>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

bool has_unsure(body::RouteGraph const& graph, std::uint32_t i, body::MoveRule rule) {
  auto const begin = graph.steps.begin() + graph.first_step[i];
  auto const end = graph.steps.begin() + graph.first_step[i + 1];
  return std::any_of(begin, end,
                     [&](body::Step const& step) { return step.rule == rule && !step.is_sure; });
}

}  // namespace

// A route that hangs on an unsure rise has a lift that starts at foot level: that family tells it.
std::vector<Sighting> unsure_moves(Passage const& passage) {
  std::vector<Sighting> seen;
  for (auto i : passage.outcome.hanging) {
    if (has_unsure(passage.graph, i, body::MoveRule::rise)) continue;
    seen.push_back({FindingKind::unsure_move, {passage.graph.positions[i].feet}, {}, 0, 0, {}});
  }
  return seen;
}

std::vector<Sighting> foot_lifts(Passage const& passage) {
  std::vector<Sighting> seen;
  for (std::uint32_t i = 0; i < passage.graph.size(); ++i) {
    if (!has_unsure(passage.graph, i, body::MoveRule::rise)) continue;
    seen.push_back({FindingKind::foot_lift, {passage.graph.positions[i].feet}, {}, 0, 0, {}});
  }
  return seen;
}

}  // namespace leat::findings
