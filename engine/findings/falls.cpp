#include "engine/findings/falls.hpp"

#include <algorithm>
#include <numeric>

namespace leat::findings {

namespace {

bool is_in_air(Passage const& passage, std::uint32_t i) {
  auto const feet = passage.graph.positions[i].feet;
  return passage.graph.ends[i] == body::End::none && !passage.here.is_wet(feet);
}

// Cell ids grow with the level, so falling order is descending order of feet cells.
std::vector<std::uint32_t> from_the_top(body::RouteGraph const& graph) {
  std::vector<std::uint32_t> order(graph.size());
  std::iota(order.begin(), order.end(), 0u);
  std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) {
    return graph.positions[a].feet > graph.positions[b].feet;
  });
  return order;
}

}  // namespace

std::vector<Landing> long_landings(Passage const& passage) {
  auto const& graph = passage.graph;
  std::vector<Landing> arrival(graph.size());
  for (auto i : from_the_top(graph)) {
    if (!is_in_air(passage, i)) continue;
    for (auto s = graph.first_step[i]; s < graph.first_step[i + 1]; ++s) {
      auto const& step = graph.steps[s];
      if (step.rule == body::MoveRule::sink || arrival[step.to].fallen > arrival[i].fallen)
        continue;
      auto const side =
          step.rule == body::MoveRule::fall ? graph.positions[i].carried_to : model::Side::none;
      arrival[step.to] = {step.to, arrival[i].fallen + 1, side, false};
    }
  }
  std::vector<Landing> landings;
  for (auto landing : arrival) {
    if (landing.fallen <= passage.here.profile().safe_fall) continue;
    auto const end = graph.ends[landing.position];
    if (is_in_air(passage, landing.position) || end == body::End::spill) continue;
    landing.in_water = passage.here.is_wet(graph.positions[landing.position].feet);
    landings.push_back(landing);
  }
  return landings;
}

}  // namespace leat::findings
