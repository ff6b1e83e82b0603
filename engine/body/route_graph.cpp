#include "engine/body/route_graph.hpp"

#include "engine/contract.hpp"

namespace leat::body {

OutletCells outlet_cells(model::Design const& design) {
  OutletCells cells;
  for (model::OutletId outlet = 0; outlet < design.outlets.size(); ++outlet) {
    for (auto c : design.outlets[outlet].cells)
      require(cells.emplace(c, outlet).second, "a cell belongs to one outlet, once");
  }
  return cells;
}

namespace {

// Numbers positions in the order in which they are first seen.
class Numbering {
 public:
  explicit Numbering(RouteGraph& graph) : graph_(graph) {}

  std::uint32_t number(Position at) {
    auto const key = (std::uint64_t{at.feet} << 8) |
                     (static_cast<std::uint64_t>(at.carried_to) << 4) | at.fallen;
    auto const next = static_cast<std::uint32_t>(graph_.positions.size());
    auto const [entry, is_new] = numbers_.try_emplace(key, next);
    if (is_new) graph_.positions.push_back(at);
    return entry->second;
  }

 private:
  RouteGraph& graph_;
  std::unordered_map<std::uint64_t, std::uint32_t> numbers_;
};

}  // namespace

std::vector<Position> entries(Surroundings const& here, std::vector<Cell> const& cells) {
  std::vector<Position> starts;
  for (auto c : cells) {
    if (here.fits(c)) starts.push_back({c, Side::none, 0});
  }
  return starts;
}

RouteGraph route_graph(Surroundings const& here, std::vector<Position> const& starts,
                       OutletCells const& outlets) {
  RouteGraph graph;
  Numbering numbering(graph);
  for (auto start : starts) graph.starts.push_back(numbering.number(start));
  for (std::uint32_t i = 0; i < graph.positions.size(); ++i) {
    graph.first_step.push_back(static_cast<std::uint32_t>(graph.steps.size()));
    auto const at = graph.positions[i];
    auto const outlet = outlets.find(at.feet);
    graph.outlets.push_back(outlet == outlets.end() ? no_outlet : outlet->second);
    if (!here.grid().is_inside(at.feet)) {
      graph.ends.push_back(End::spill);
    } else if (outlet != outlets.end()) {
      graph.ends.push_back(End::outlet);
    } else {
      auto const moves = moves_from(here, at);
      for (auto const& move : moves) {
        graph.steps.push_back({numbering.number(move.to), move.rule, move.is_sure});
      }
      graph.ends.push_back(moves.empty() ? rest_at(here, at) : End::none);
    }
  }
  graph.first_step.push_back(static_cast<std::uint32_t>(graph.steps.size()));
  return graph;
}

std::vector<bool> leading_to(RouteGraph const& graph, std::vector<std::uint32_t> goals) {
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
  std::vector<bool> leads(n, false);
  for (auto i : goals) leads[i] = true;
  while (!goals.empty()) {
    auto const at = goals.back();
    goals.pop_back();
    for (auto s = first_into[at]; s < first_into[at + 1]; ++s) {
      if (leads[into[s]]) continue;
      leads[into[s]] = true;
      goals.push_back(into[s]);
    }
  }
  return leads;
}

std::vector<std::uint32_t> positions_at(RouteGraph const& graph, model::OutletId outlet) {
  std::vector<std::uint32_t> found;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (graph.ends[i] == End::outlet && graph.outlets[i] == outlet) found.push_back(i);
  }
  return found;
}

}  // namespace leat::body
