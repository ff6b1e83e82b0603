#include "engine/body/capacity.hpp"

#include <algorithm>
#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/push_relabel_max_flow.hpp>
#include <cmath>
#include <map>
#include <utility>

#include "engine/body/pace.hpp"

namespace leat::body {

using model::Rule;

namespace {

// What a body takes along a stream, in cells: every cell past the one or two of the standard adds a
// whole one.
double width(Surroundings const& here) {
  return here.practice()[Rule::body_width] / 1000.0 + (here.profile().footprint - 1);
}
double height(Surroundings const& here) {
  return here.practice()[Rule::body_height] / 1000.0 + (here.profile().height - 2);
}

// No stream of the model comes near the ceiling: it keeps sums far from their end.
Rate rate(Surroundings const& here, double bodies_a_tick) {
  constexpr double million = 1e6, ceiling = 1e12;
  auto const ticks_a_second = here.practice()[Rule::ticks_per_second];
  return std::llround(std::min(bodies_a_tick * ticks_a_second * million, ceiling));
}

Rate rate_pushed(Surroundings const& here, Position from, Position to) {
  return rate(here, terminal_speed(pushed(here, from.feet, to.feet)) / width(here));
}
Rate rate_risen(Surroundings const& here) {
  return rate(here, terminal_speed(risen(here)) / height(here));
}
Rate rate_sunk(Surroundings const& here) {
  return rate(here, terminal_speed(sunk(here)) / height(here));
}
Rate rate_fallen(Surroundings const& here) {
  auto const ticks = ticks_for(fallen(here), height(here));
  return ticks ? rate(here, 1.0 / *ticks) : 0;
}

Rate rate_down(Surroundings const& here, Position from, Position to) {
  if (here.is_wet(from.feet)) return rate_sunk(here);
  bool const is_one_cell = here.grid().place(from.feet).z - here.grid().place(to.feet).z == 1;
  return is_one_cell ? rate_fallen(here) : std::min(rate_fallen(here), rate_sunk(here));
}

}  // namespace

Rate rate_of(Surroundings const& here, Position from, Position to, MoveRule rule) {
  switch (rule) {
    case MoveRule::fall:
    case MoveRule::sink:
      return rate_down(here, from, to);
    case MoveRule::rise:
      return rate_risen(here);
    case MoveRule::push:
      return rate_pushed(here, from, to);
    case MoveRule::climb:
      return std::min(rate_risen(here), rate_pushed(here, from, to));
    case MoveRule::drift:
      return here.is_wet(from.feet)
                 ? rate_pushed(here, from, to)
                 : std::min(rate_down(here, from, to), rate_pushed(here, from, to));
  }
  return 0;
}

namespace {

// The cells that lead to one outlet and what can pass between them. An ordered map, so that the
// network is the same whatever the order of positions.
struct Streams {
  std::map<std::pair<Cell, Cell>, Rate> steps;
  std::map<Cell, Rate>
      through;                // per cell, the quickest step that leaves it; at the outlet no_limit
  std::vector<Cell> entries;  // ascending, each once
};

Streams streams_to(Surroundings const& here, RouteGraph const& graph, model::OutletId outlet) {
  auto const ends = positions_at(graph, outlet);
  auto const leads = leading_to(graph, ends);
  Streams streams;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (!leads[i]) continue;
    auto const from = graph.positions[i];
    auto& through = streams.through[from.feet];
    for (auto s = graph.first_step[i]; s < graph.first_step[i + 1]; ++s) {
      auto const& step = graph.steps[s];
      if (!leads[step.to]) continue;
      auto const to = graph.positions[step.to];
      auto const rate = rate_of(here, from, to, step.rule);
      through = std::max(through, rate);
      auto& between = streams.steps[{from.feet, to.feet}];
      between = std::max(between, rate);
    }
  }
  for (auto i : ends) streams.through[graph.positions[i].feet] = no_limit;
  for (auto i : graph.starts) {
    if (leads[i]) streams.entries.push_back(graph.positions[i].feet);
  }
  std::sort(streams.entries.begin(), streams.entries.end());
  streams.entries.erase(std::unique(streams.entries.begin(), streams.entries.end()),
                        streams.entries.end());
  return streams;
}

// The network of a flow: one vertex before all entries, one behind all outlet cells, and two a
// cell, before and behind what it passes.
class FlowGraph {
 public:
  explicit FlowGraph(Streams const& streams) : graph_(2 + 2 * streams.through.size()) {
    for (auto const& [cell, rate] : streams.through) {
      numbers_.emplace(cell, cells_.size());
      cells_.push_back(cell);
    }
    for (auto const& [cell, rate] : streams.through) {
      bool const is_at_outlet = rate == no_limit;
      connect(before(cell), is_at_outlet ? behind_all : behind(cell), is_at_outlet ? ample : rate);
    }
    for (auto const& [between, rate] : streams.steps)
      connect(behind(between.first), before(between.second), rate);
    for (auto cell : streams.entries) connect(before_all, before(cell), streams.through.at(cell));
  }

  Throughput greatest_flow() {
    Throughput result;
    result.rate = boost::push_relabel_max_flow(graph_, before_all, behind_all);
    auto const has_room = reached_with_room();
    std::map<Cell, Rate> narrow;
    for (auto const& arc : arcs_) {
      auto const from = boost::source(arc, graph_), to = boost::target(arc, graph_);
      if (has_room[from] && !has_room[to])
        narrow[cell_of(from == before_all ? to : from)] +=
            boost::get(boost::edge_capacity, graph_, arc);
    }
    for (auto const& [cell, rate] : narrow) result.narrowest.push_back({cell, rate});
    return result;
  }

 private:
  using Traits = boost::adjacency_list_traits<boost::vecS, boost::vecS, boost::directedS>;
  using Edge = Traits::edge_descriptor;
  using Vertex = Traits::vertex_descriptor;
  using Graph = boost::adjacency_list<
      boost::vecS, boost::vecS, boost::directedS, boost::no_property,
      boost::property<boost::edge_capacity_t, Rate,
                      boost::property<boost::edge_residual_capacity_t, Rate,
                                      boost::property<boost::edge_reverse_t, Edge>>>>;
  static constexpr Vertex before_all = 0, behind_all = 1;
  static constexpr Rate ample = 1'000'000'000'000'000'000;

  Vertex before(Cell cell) const { return 2 + 2 * numbers_.at(cell); }
  Vertex behind(Cell cell) const { return before(cell) + 1; }
  Cell cell_of(Vertex vertex) const { return cells_[(vertex - 2) / 2]; }

  Edge add_arc(Vertex from, Vertex to, Rate rate) {
    auto const edge = boost::add_edge(from, to, graph_).first;
    boost::put(boost::edge_capacity, graph_, edge, rate);
    return edge;
  }

  void connect(Vertex from, Vertex to, Rate rate) {
    auto const there = add_arc(from, to, rate), back = add_arc(to, from, 0);
    boost::put(boost::edge_reverse, graph_, there, back);
    boost::put(boost::edge_reverse, graph_, back, there);
    arcs_.push_back(there);
  }

  // The vertices to which more could still flow from before all entries.
  std::vector<bool> reached_with_room() const {
    std::vector<bool> is_reached(boost::num_vertices(graph_), false);
    std::vector<Vertex> open{before_all};
    is_reached[before_all] = true;
    while (!open.empty()) {
      auto const at = open.back();
      open.pop_back();
      for (auto [edge, end] = boost::out_edges(at, graph_); edge != end; ++edge) {
        auto const to = boost::target(*edge, graph_);
        bool const has_room = boost::get(boost::edge_residual_capacity, graph_, *edge) > 0;
        if (!has_room || is_reached[to]) continue;
        is_reached[to] = true;
        open.push_back(to);
      }
    }
    return is_reached;
  }

  Graph graph_;
  std::vector<Cell> cells_;
  std::map<Cell, std::size_t> numbers_;
  std::vector<Edge> arcs_;
};

}  // namespace

Throughput throughput(Surroundings const& here, RouteGraph const& graph, model::OutletId outlet) {
  auto const streams = streams_to(here, graph, outlet);
  for (auto cell : streams.entries) {
    if (streams.through.at(cell) == no_limit) return {no_limit, {}};
  }
  return streams.entries.empty() ? Throughput{} : FlowGraph(streams).greatest_flow();
}

}  // namespace leat::body
