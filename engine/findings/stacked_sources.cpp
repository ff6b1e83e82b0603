#include <algorithm>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

// The sources on top of each other through `c`, lowest first; empty if `c` holds none.
std::vector<Cell> stack_through(water::Moment const& now, Cell c) {
  std::vector<Cell> stack;
  if (!now.is_source(c)) return stack;
  while (now.is_source(now.grid().below(c))) c = now.grid().below(c);
  for (; now.is_source(c); c = now.grid().above(c)) stack.push_back(c);
  return stack;
}

// The positions of bodies on their way up: they came in by a side, or enter here, and rose from
// there. A body that fell into water and floats up again is in no lift, so a cushion of sources is
// none.
std::vector<bool> in_a_lift(body::RouteGraph const& graph) {
  std::vector<bool> is_lifted(graph.size(), false);
  std::vector<std::uint32_t> open;
  auto const lift = [&](std::uint32_t i) {
    if (is_lifted[i]) return;
    is_lifted[i] = true;
    open.push_back(i);
  };
  for (auto start : graph.starts) lift(start);
  for (auto const& step : graph.steps) {
    if (step.rule == body::MoveRule::push || step.rule == body::MoveRule::climb) lift(step.to);
  }
  while (!open.empty()) {
    auto const at = open.back();
    open.pop_back();
    for (auto s = graph.first_step[at]; s < graph.first_step[at + 1]; ++s) {
      if (graph.steps[s].rule == body::MoveRule::rise) lift(graph.steps[s].to);
    }
  }
  return is_lifted;
}

}  // namespace

// A stack counts where a body is lifted through it: at the cells it fills before and after the
// move.
std::vector<Sighting> stacked_sources(Passage const& passage) {
  auto const& graph = passage.graph;
  auto const most = passage.here.practice()[model::Rule::lift_sources];
  auto const is_lifted = in_a_lift(graph);
  std::vector<std::vector<Cell>> stacks;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (!is_lifted[i]) continue;
    for (auto s = graph.first_step[i]; s < graph.first_step[i + 1]; ++s) {
      if (graph.steps[s].rule != body::MoveRule::rise) continue;
      for (int level = 0; level <= passage.here.profile().height; ++level) {
        auto const c = passage.here.grid().raised(graph.positions[i].feet, level);
        auto stack = stack_through(passage.here.moment(), c);
        if (static_cast<int>(stack.size()) > most) stacks.push_back(std::move(stack));
      }
    }
  }
  std::sort(stacks.begin(), stacks.end());
  stacks.erase(std::unique(stacks.begin(), stacks.end()), stacks.end());
  std::vector<Sighting> seen;
  for (auto& stack : stacks) {
    auto const height = static_cast<int>(stack.size());
    seen.push_back({FindingKind::stacked_sources, std::move(stack), {}, height, most, {}});
  }
  return seen;
}

}  // namespace leat::findings
