#include "engine/body/outcome.hpp"

#include <algorithm>

namespace leat::body {

namespace {

// B: the positions from which an outlet can be reached, by walking all steps backwards from the
// outlets.
std::vector<bool> reaches_an_outlet(RouteGraph const& graph) {
  auto const n = graph.size();
  std::vector<std::uint32_t> first_into(n + 1, 0), into(graph.steps.size());
  for (auto const& step : graph.steps) ++first_into[step.to + 1];
  for (std::size_t i = 0; i < n; ++i) first_into[i + 1] += first_into[i];
  auto next_into = first_into;
  for (std::uint32_t from = 0; from < n; ++from) {
    for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s) {
      into[next_into[graph.steps[s].to]++] = from;
    }
  }
  std::vector<bool> reaches(n, false);
  std::vector<std::uint32_t> open;
  for (std::uint32_t i = 0; i < n; ++i) {
    if (graph.ends[i] == End::outlet) open.push_back(i);
  }
  for (auto i : open) reaches[i] = true;
  while (!open.empty()) {
    auto const at = open.back();
    open.pop_back();
    for (auto s = first_into[at]; s < first_into[at + 1]; ++s) {
      if (reaches[into[s]]) continue;
      reaches[into[s]] = true;
      open.push_back(into[s]);
    }
  }
  return reaches;
}

bool hangs(RouteGraph const& graph, std::uint32_t i) {
  auto const begin = graph.steps.begin() + graph.first_step[i];
  auto const end = graph.steps.begin() + graph.first_step[i + 1];
  return begin != end && std::none_of(begin, end, [](Step const& step) { return step.is_sure; });
}

Verdict verdict_of(Outcome const& outcome) {
  if (outcome.outlets.empty()) return Verdict::lost;
  if (outcome.outlets.size() > 1) return Verdict::split;
  bool const is_clean = !outcome.has_trap && !outcome.spills && outcome.hanging.empty();
  return is_clean ? Verdict::certain : Verdict::doubtful;
}

}  // namespace

Outcome outcome_of(RouteGraph const& graph) {
  Outcome outcome;
  auto const reaches = reaches_an_outlet(graph);
  outcome.is_trapped.assign(graph.size(), false);
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (graph.ends[i] == End::outlet) outcome.outlets.push_back(graph.outlets[i]);
    if (graph.ends[i] == End::spill) outcome.spills = true;
    if (hangs(graph, i)) outcome.hanging.push_back(i);
    outcome.is_trapped[i] = !reaches[i] && graph.ends[i] != End::spill;
    outcome.has_trap = outcome.has_trap || outcome.is_trapped[i];
  }
  std::sort(outcome.outlets.begin(), outcome.outlets.end());
  outcome.outlets.erase(std::unique(outcome.outlets.begin(), outcome.outlets.end()),
                        outcome.outlets.end());
  outcome.verdict = verdict_of(outcome);
  return outcome;
}

}  // namespace leat::body
