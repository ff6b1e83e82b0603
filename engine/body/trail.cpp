#include "engine/body/trail.hpp"

#include <algorithm>

namespace leat::body {

namespace {

constexpr std::uint32_t unseen = 0xffffffffu, begins = 0xfffffffeu;

struct Arrival {
  std::uint32_t step = unseen;  // the step that first led here
  std::uint32_t from = 0;
};

Trail walked_back(std::vector<Arrival> const& arrivals, std::uint32_t goal) {
  Trail trail;
  auto at = goal;
  for (; arrivals[at].step != begins; at = arrivals[at].from) {
    trail.positions.push_back(at);
    trail.steps.push_back(arrivals[at].step);
  }
  trail.positions.push_back(at);
  std::reverse(trail.positions.begin(), trail.positions.end());
  std::reverse(trail.steps.begin(), trail.steps.end());
  return trail;
}

}  // namespace

std::optional<Trail> shortest_trail(RouteGraph const& graph,
                                    std::function<bool(std::uint32_t)> const& is_goal) {
  std::vector<Arrival> arrivals(graph.size());
  std::vector<std::uint32_t> queue;
  for (auto start : graph.starts) {
    if (arrivals[start].step != unseen) continue;
    arrivals[start].step = begins;
    queue.push_back(start);
  }
  for (std::size_t head = 0; head < queue.size(); ++head) {
    auto const at = queue[head];
    if (is_goal(at)) return walked_back(arrivals, at);
    for (auto s = graph.first_step[at]; s < graph.first_step[at + 1]; ++s) {
      auto& arrival = arrivals[graph.steps[s].to];
      if (arrival.step != unseen) continue;
      arrival = {s, at};
      queue.push_back(graph.steps[s].to);
    }
  }
  return std::nullopt;
}

}  // namespace leat::body
