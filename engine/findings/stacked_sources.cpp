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

}  // namespace

// A stack counts where a body rises through it: at the cells it fills before and after the move.
std::vector<Sighting> stacked_sources(Passage const& passage) {
  auto const& graph = passage.graph;
  auto const most = passage.here.practice()[model::Rule::lift_sources];
  std::vector<std::vector<Cell>> stacks;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
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
