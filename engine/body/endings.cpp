#include "engine/body/endings.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "engine/body/shape.hpp"

namespace leat::body {

namespace {

EndingKind kind_of(End end) {
  if (end == End::outlet) return EndingKind::outlet;
  return end == End::spill ? EndingKind::spill : EndingKind::rest;
}

Trail trail_to(RouteGraph const& graph, std::uint32_t goal) {
  return *shortest_trail(graph, [goal](std::uint32_t at) { return at == goal; });
}

// Positions are in breadth-first order, so the first of an outlet or cell is a nearest one.
void append_last_positions(RouteGraph const& graph, std::vector<Ending>& result) {
  std::set<std::pair<EndingKind, std::uint32_t>> seen;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    auto const end = graph.ends[i];
    if (end == End::none) continue;
    auto const kind = kind_of(end);
    auto const key = kind == EndingKind::outlet ? graph.outlets[i] : graph.positions[i].feet;
    if (!seen.emplace(kind, key).second) continue;
    result.push_back({kind, end, graph.outlets[i], {}, trail_to(graph, i)});
  }
}

void append_loops(RouteGraph const& graph, std::vector<Ending>& result) {
  for (auto const& loop : closed_loops(graph)) {
    Ending ending{EndingKind::loop, End::none, no_outlet, {}, trail_to(graph, loop.front())};
    for (auto i : loop) ending.loop.push_back(graph.positions[i].feet);
    std::sort(ending.loop.begin(), ending.loop.end());
    ending.loop.erase(std::unique(ending.loop.begin(), ending.loop.end()), ending.loop.end());
    result.push_back(std::move(ending));
  }
}

}  // namespace

std::vector<Ending> endings(RouteGraph const& graph) {
  std::vector<Ending> result;
  append_last_positions(graph, result);
  append_loops(graph, result);
  std::stable_sort(result.begin(), result.end(), [](Ending const& a, Ending const& b) {
    if (a.kind != b.kind) return a.kind < b.kind;
    return a.kind == EndingKind::outlet && a.outlet < b.outlet;
  });
  return result;
}

}  // namespace leat::body
