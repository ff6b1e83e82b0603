#include "engine/body/shape.hpp"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dominator_tree.hpp>
#include <boost/graph/strong_components.hpp>

namespace leat::body {

namespace {

using Edge = std::pair<std::uint32_t, std::uint32_t>;

std::vector<Edge> edges_of(RouteGraph const& graph) {
  std::vector<Edge> edges;
  edges.reserve(graph.steps.size());
  for (std::uint32_t from = 0; from < graph.size(); ++from) {
    for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s) {
      edges.emplace_back(from, graph.steps[s].to);
    }
  }
  return edges;
}

}  // namespace

Components strong_components(RouteGraph const& graph) {
  Components result{std::vector<std::uint32_t>(graph.size(), 0), 0};
  if (graph.size() == 0) return result;
  auto const edges = edges_of(graph);
  using Csr =
      boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, boost::no_property,
                                         boost::no_property, std::uint32_t, std::uint32_t>;
  Csr const csr(boost::edges_are_sorted, edges.begin(), edges.end(),
                static_cast<std::uint32_t>(graph.size()));
  auto const map = boost::make_iterator_property_map(result.component_of.begin(),
                                                     boost::get(boost::vertex_index, csr));
  result.count = static_cast<std::uint32_t>(boost::strong_components(csr, map));
  return result;
}

std::vector<std::vector<std::uint32_t>> closed_loops(RouteGraph const& graph) {
  auto const components = strong_components(graph);
  std::vector<bool> has_inner_step(components.count, false), has_way_out(components.count, false);
  for (auto const& [from, to] : edges_of(graph)) {
    auto const own = components.component_of[from];
    (own == components.component_of[to] ? has_inner_step : has_way_out)[own] = true;
  }
  std::vector<std::vector<std::uint32_t>> members(components.count), loops;
  for (std::uint32_t i = 0; i < graph.size(); ++i) members[components.component_of[i]].push_back(i);
  for (std::uint32_t c = 0; c < components.count; ++c) {
    if (has_inner_step[c] && !has_way_out[c]) loops.push_back(std::move(members[c]));
  }
  return loops;
}

// Lengauer and Tarjan through the overload with explicit maps: the short one takes unset
// depth-first numbers for the entry's own and errs where a vertex is unreachable. Here all are
// reachable, and the maps cost nothing.
std::vector<std::uint32_t> immediate_dominators(RouteGraph const& graph) {
  auto const n = graph.size();
  using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::bidirectionalS>;
  using Vertex = boost::graph_traits<Graph>::vertex_descriptor;
  Graph flow(n + 1);
  for (auto const& [from, to] : edges_of(graph)) boost::add_edge(from, to, flow);
  for (auto start : graph.starts) boost::add_edge(n, start, flow);

  auto const none = boost::graph_traits<Graph>::null_vertex();
  auto const index = boost::get(boost::vertex_index, flow);
  std::vector<Vertex> number(n + 1, none), parent(n + 1, none), dominator(n + 1, none),
      by_number(n + 1, none);
  boost::lengauer_tarjan_dominator_tree(
      flow, Vertex{n}, index, boost::make_iterator_property_map(number.begin(), index),
      boost::make_iterator_property_map(parent.begin(), index), by_number,
      boost::make_iterator_property_map(dominator.begin(), index));
  std::vector<std::uint32_t> result(n, at_root);
  for (std::size_t i = 0; i < n; ++i) {
    if (dominator[i] != n && dominator[i] != none)
      result[i] = static_cast<std::uint32_t>(dominator[i]);
  }
  return result;
}

}  // namespace leat::body
