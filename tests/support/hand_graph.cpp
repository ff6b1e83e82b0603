#include "tests/support/hand_graph.hpp"

namespace leat::drawn {

body::RouteGraph hand_graph(std::uint32_t size, std::vector<HandStep> const& steps,
                            std::map<std::uint32_t, model::OutletId> const& outlets,
                            std::map<std::uint32_t, body::End> const& ends,
                            std::vector<std::uint32_t> starts) {
  body::RouteGraph graph;
  graph.starts = std::move(starts);
  for (std::uint32_t i = 0; i < size; ++i) {
    graph.positions.push_back({i, model::Side::none, 0});
    graph.first_step.push_back(static_cast<std::uint32_t>(graph.steps.size()));
    for (auto const& step : steps) {
      if (step.from == i) graph.steps.push_back({step.to, body::MoveRule::push, step.is_sure});
    }
    bool const has_steps = graph.steps.size() > graph.first_step.back();
    auto const end = ends.find(i);
    auto const outlet = outlets.find(i);
    graph.outlets.push_back(outlet == outlets.end() ? body::no_outlet : outlet->second);
    graph.ends.push_back(outlet != outlets.end() ? body::End::outlet
                         : end != ends.end()     ? end->second
                         : has_steps             ? body::End::none
                                                 : body::End::dry);
  }
  graph.first_step.push_back(static_cast<std::uint32_t>(graph.steps.size()));
  return graph;
}

}  // namespace leat::drawn
