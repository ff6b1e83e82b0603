#include "engine/body/travel.hpp"

#include <algorithm>
#include <cmath>

namespace leat::body {

using model::Rule;

namespace {

double per_mille(Surroundings const& here, Rule rule) { return here.practice()[rule] / 1000.0; }

// Ticks until a body that starts at rest and moves by v' = v * kept + won has gone one cell. The
// terminal speed is won / (1 - kept); below a cell in most_ticks nothing is promised.
std::optional<int> ticks_for_one_cell(double won, double kept) {
  constexpr int most_ticks = 100'000;
  double speed = 0, way = 0;
  for (int ticks = 1; ticks <= most_ticks; ++ticks) {
    speed = speed * kept + won;
    way += speed;
    if (way >= 1) return ticks;
  }
  return std::nullopt;
}

std::optional<int> ticks_pushed(Surroundings const& here, Position from) {
  auto const push = here.push(from.feet);
  auto const size = std::hypot(push.x, push.y);
  if (push.is_none())
    return ticks_for_one_cell(per_mille(here, Rule::water_push), per_mille(here, Rule::water_drag));
  // Of a diagonal push the weaker side is the slower one.
  auto const weaker =
      push.along_x() && push.along_y() ? std::min(std::abs(push.x), std::abs(push.y)) : size;
  return ticks_for_one_cell(per_mille(here, Rule::water_push) * weaker / size,
                            per_mille(here, Rule::water_drag));
}

std::optional<int> ticks_risen(Surroundings const& here) {
  auto const stroke = per_mille(here, Rule::upward_stroke) * per_mille(here, Rule::stroke_chance);
  return ticks_for_one_cell(stroke - per_mille(here, Rule::water_gravity),
                            per_mille(here, Rule::water_drag));
}

std::optional<int> sum(std::optional<int> a, std::optional<int> b) {
  return a && b ? std::optional(*a + *b) : std::nullopt;
}

// Out of the air the first cell is fallen, the rest is under water.
std::optional<int> ticks_down(Surroundings const& here, Position from, Position to) {
  auto const levels = here.grid().place(from.feet).z - here.grid().place(to.feet).z;
  auto const kept = per_mille(here, Rule::air_drag);
  auto const first = here.is_wet(from.feet)
                         ? std::nullopt
                         : ticks_for_one_cell(per_mille(here, Rule::gravity) * kept, kept);
  auto const under =
      ticks_for_one_cell(per_mille(here, Rule::water_gravity), per_mille(here, Rule::water_drag));
  auto const wet_levels = first ? levels - 1 : levels;
  auto const below = under ? std::optional(*under * wet_levels) : std::nullopt;
  return first ? sum(first, below) : below;
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
      return ticks_pushed(here, from);
    case MoveRule::climb:
      return sum(ticks_risen(here), ticks_pushed(here, from));
    case MoveRule::drift:
      return here.is_wet(from.feet) ? ticks_pushed(here, from)
                                    : sum(ticks_down(here, from, to), ticks_pushed(here, from));
  }
  return std::nullopt;
}

std::optional<int> longest_trip(Surroundings const& here, RouteGraph const& graph) {
  std::vector<std::uint32_t> open_into(graph.size(), 0), ready;
  for (auto const& step : graph.steps) ++open_into[step.to];
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (open_into[i] == 0) ready.push_back(i);
  }
  std::vector<int> longest(graph.size(), 0);
  std::size_t visited = 0;
  while (!ready.empty()) {
    auto const at = ready.back();
    ready.pop_back();
    ++visited;
    for (auto s = graph.first_step[at]; s < graph.first_step[at + 1]; ++s) {
      auto const& step = graph.steps[s];
      auto const ticks = ticks_of(here, graph.positions[at], graph.positions[step.to], step.rule);
      if (!ticks) return std::nullopt;
      longest[step.to] = std::max(longest[step.to], longest[at] + *ticks);
      if (--open_into[step.to] == 0) ready.push_back(step.to);
    }
  }
  if (visited != graph.size()) return std::nullopt;
  return longest.empty() ? 0 : *std::max_element(longest.begin(), longest.end());
}

}  // namespace leat::body
