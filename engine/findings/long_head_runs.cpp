#include <algorithm>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

// A body is in a head run while its head is in water and it cannot rise out of it.
std::vector<bool> in_head_run(Passage const& passage) {
  auto const& graph = passage.graph;
  auto const head = passage.here.profile().height - 1;
  std::vector<bool> result(graph.size(), false);
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (graph.ends[i] == body::End::spill || graph.ends[i] == body::End::outlet) continue;
    if (!passage.here.are_feet_wet(passage.here.grid().raised(graph.positions[i].feet, head)))
      continue;
    result[i] = std::none_of(
        graph.steps.begin() + graph.first_step[i], graph.steps.begin() + graph.first_step[i + 1],
        [](body::Step const& step) { return step.rule == body::MoveRule::rise; });
  }
  return result;
}

// Where a run begins: the body enters there, or comes in any other way than pushed on from a cell
// of the run.
std::vector<std::uint32_t> beginnings(body::RouteGraph const& graph,
                                      std::vector<bool> const& is_in_run) {
  std::vector<bool> begins(graph.size(), false);
  for (auto start : graph.starts) begins[start] = true;
  for (std::uint32_t from = 0; from < graph.size(); ++from) {
    for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s) {
      bool const goes_on = is_in_run[from] && graph.steps[s].rule == body::MoveRule::push;
      if (!goes_on) begins[graph.steps[s].to] = true;
    }
  }
  std::vector<std::uint32_t> result;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (begins[i] && is_in_run[i]) result.push_back(i);
  }
  return result;
}

struct Run {
  int length = 0;           // the pushes to the farthest cell, and one more
  std::vector<Cell> cells;  // ascending
};

// Breadth first from push to push until the head is free again. Where the current parts, the cells
// of all branches belong to the run.
Run run_from(body::RouteGraph const& graph, std::vector<bool> const& is_in_run,
             std::uint32_t start) {
  Run run;
  std::vector<std::uint32_t> layer{start};
  std::vector<bool> seen(graph.size(), false);
  seen[start] = true;
  while (!layer.empty()) {
    std::vector<std::uint32_t> next;
    for (auto i : layer) {
      run.cells.push_back(graph.positions[i].feet);
      for (auto s = graph.first_step[i]; s < graph.first_step[i + 1]; ++s) {
        auto const to = graph.steps[s].to;
        if (graph.steps[s].rule != body::MoveRule::push || !is_in_run[to] || seen[to]) continue;
        seen[to] = true;
        next.push_back(to);
      }
    }
    ++run.length;
    layer.swap(next);
  }
  std::sort(run.cells.begin(), run.cells.end());
  run.cells.erase(std::unique(run.cells.begin(), run.cells.end()), run.cells.end());
  return run;
}

}  // namespace

std::vector<Sighting> long_head_runs(Passage const& passage) {
  if (passage.here.profile().height < 2) return {};
  auto const is_in_run = in_head_run(passage);
  auto const most = passage.here.practice()[model::Rule::head_run];
  std::vector<Sighting> seen;
  for (auto start : beginnings(passage.graph, is_in_run)) {
    auto run = run_from(passage.graph, is_in_run, start);
    if (run.length <= most) continue;
    seen.push_back({FindingKind::long_head_run, std::move(run.cells), {}, run.length, most, {}});
  }
  return seen;
}

}  // namespace leat::findings
