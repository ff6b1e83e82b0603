#include "engine/findings/falls.hpp"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

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
  std::vector<int> fallen(graph.size(), 0);
  std::map<std::pair<std::uint32_t, model::Side>, int> longest;
  for (auto start : graph.starts) {
    if (is_in_air(passage, start))
      fallen[start] = passage.before.cells;
    else if (passage.before.cells > 0)
      longest[{start, passage.before.carried_to}] = passage.before.cells;
  }
  for (auto i : from_the_top(graph)) {
    if (!is_in_air(passage, i)) continue;
    for (auto s = graph.first_step[i]; s < graph.first_step[i + 1]; ++s) {
      auto const& step = graph.steps[s];
      if (step.rule == body::MoveRule::sink || graph.ends[step.to] == body::End::spill) continue;
      auto const below = passage.here.grid().below(graph.positions[i].feet);
      bool const is_straight = graph.positions[step.to].feet == below;
      auto const side = is_straight ? graph.positions[i].carried_to : model::Side::none;
      auto& there = is_in_air(passage, step.to) ? fallen[step.to] : longest[{step.to, side}];
      there = std::max(there, fallen[i] + 1);
    }
  }
  std::vector<Landing> landings;
  for (auto const& [where, length] : longest) {
    if (length <= passage.here.profile().safe_fall) continue;
    bool const in_water = passage.here.is_wet(graph.positions[where.first].feet);
    landings.push_back({where.first, length, where.second, in_water});
  }
  return landings;
}

}  // namespace leat::findings
