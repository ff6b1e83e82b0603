#include "engine/body/travel.hpp"

#include <algorithm>
#include <cstdint>
#include <functional>
#include <limits>
#include <queue>
#include <utility>

#include "engine/body/pace.hpp"

namespace leat::body {

namespace {

using Ticks = std::int64_t;

std::optional<int> ticks_pushed(Surroundings const& here, Position from, Position to) {
  return ticks_for(pushed(here, from.feet, to.feet), 1);
}

std::optional<int> ticks_risen(Surroundings const& here) { return ticks_for(risen(here), 1); }

std::optional<int> sum(std::optional<int> a, std::optional<int> b) {
  return a && b ? std::optional(*a + *b) : std::nullopt;
}

// Out of the air the first cell is fallen, the rest is under water.
std::optional<int> ticks_down(Surroundings const& here, Position from, Position to) {
  auto const levels = here.grid().place(from.feet).z - here.grid().place(to.feet).z;
  bool const is_in_air = !here.is_wet(from.feet);
  auto const ticks_under = [&](int wet_levels) {
    auto const one = wet_levels > 0 ? ticks_for(sunk(here), 1) : std::optional(0);
    return one ? std::optional(*one * wet_levels) : std::nullopt;
  };
  return is_in_air ? sum(ticks_for(fallen(here), 1), ticks_under(levels - 1)) : ticks_under(levels);
}

// A trip of more ticks than an int holds has no bound worth telling.
std::optional<int> told(Ticks ticks) {
  if (ticks > std::numeric_limits<int>::max()) return std::nullopt;
  return static_cast<int>(ticks);
}

std::optional<int> ticks_of(Surroundings const& here, RouteGraph const& graph, std::uint32_t from,
                            Step const& step) {
  return ticks_of(here, graph.positions[from], graph.positions[step.to], step.rule);
}

// Visits the steps of a position that stay within a part, as long as the visit wants more.
template <class Visit>
bool each_step_within(RouteGraph const& graph, std::vector<bool> const& part, std::uint32_t from,
                      Visit visit) {
  for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s) {
    if (part[graph.steps[s].to] && !visit(graph.steps[s])) return false;
  }
  return true;
}

std::vector<std::uint32_t> steps_into(RouteGraph const& graph, std::vector<bool> const& part) {
  std::vector<std::uint32_t> count(graph.size(), 0);
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (!part[i]) continue;
    each_step_within(graph, part, i, [&](Step const& step) { return ++count[step.to] > 0; });
  }
  return count;
}

std::optional<int> longest_within(Surroundings const& here, RouteGraph const& graph,
                                  std::vector<bool> const& part) {
  auto open_into = steps_into(graph, part);
  std::vector<std::uint32_t> ready;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (part[i] && open_into[i] == 0) ready.push_back(i);
  }
  auto left = std::count(part.begin(), part.end(), true);
  std::vector<Ticks> longest(graph.size(), 0);
  for (; !ready.empty(); --left) {
    auto const at = ready.back();
    ready.pop_back();
    bool const is_bounded = each_step_within(graph, part, at, [&](Step const& step) {
      auto const ticks = ticks_of(here, graph, at, step);
      if (!ticks) return false;
      longest[step.to] = std::max(longest[step.to], longest[at] + *ticks);
      if (--open_into[step.to] == 0) ready.push_back(step.to);
      return true;
    });
    if (!is_bounded) return std::nullopt;
  }
  if (left > 0) return std::nullopt;
  return told(longest.empty() ? 0 : *std::max_element(longest.begin(), longest.end()));
}

}  // namespace

std::optional<int> ticks_of(Surroundings const& here, Position from, Position to, MoveRule rule) {
  switch (rule) {
    case MoveRule::fall:
    case MoveRule::sink:
      return ticks_down(here, from, to);
    case MoveRule::rise:
      return ticks_risen(here);
    case MoveRule::push:
      return ticks_pushed(here, from, to);
    case MoveRule::climb:
      return sum(ticks_risen(here), ticks_pushed(here, from, to));
    case MoveRule::drift:
      return here.is_wet(from.feet) ? ticks_pushed(here, from, to)
                                    : sum(ticks_down(here, from, to), ticks_pushed(here, from, to));
  }
  return std::nullopt;
}

std::optional<int> longest_trip(Surroundings const& here, RouteGraph const& graph) {
  return longest_within(here, graph, std::vector<bool>(graph.size(), true));
}

std::optional<int> longest_trip(Surroundings const& here, RouteGraph const& graph,
                                model::OutletId outlet) {
  auto ends = positions_at(graph, outlet);
  if (ends.empty()) return std::nullopt;
  return longest_within(here, graph, leading_to(graph, std::move(ends)));
}

std::optional<int> quickest_trip(Surroundings const& here, RouteGraph const& graph,
                                 model::OutletId outlet) {
  constexpr auto never = std::numeric_limits<Ticks>::max();
  using Arrival = std::pair<Ticks, std::uint32_t>;
  std::vector<Ticks> earliest(graph.size(), never);
  std::priority_queue<Arrival, std::vector<Arrival>, std::greater<>> open;
  auto const arrive = [&](std::uint32_t at, Ticks ticks) {
    if (ticks >= earliest[at]) return;
    earliest[at] = ticks;
    open.push({ticks, at});
  };
  for (auto start : graph.starts) arrive(start, 0);
  while (!open.empty()) {
    auto const [ticks, at] = open.top();
    open.pop();
    if (ticks > earliest[at]) continue;
    if (graph.ends[at] == End::outlet && graph.outlets[at] == outlet) return told(ticks);
    for (auto s = graph.first_step[at]; s < graph.first_step[at + 1]; ++s) {
      if (auto const more = ticks_of(here, graph, at, graph.steps[s]))
        arrive(graph.steps[s].to, ticks + *more);
    }
  }
  return std::nullopt;
}

}  // namespace leat::body
