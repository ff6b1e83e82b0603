#include "engine/body/outcome.hpp"

#include <algorithm>
#include <utility>

namespace leat::body {

namespace {

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
  std::vector<std::uint32_t> ends;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (graph.ends[i] == End::outlet) ends.push_back(i);
  }
  auto const reaches = leading_to(graph, std::move(ends));  // the set B
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
