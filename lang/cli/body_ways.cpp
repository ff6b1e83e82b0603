#include "lang/cli/body_ways.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <memory>

#include "engine/body/surroundings.hpp"
#include "engine/body/trail.hpp"

namespace leat::cli {

namespace {

using body::RouteGraph;
using Goal = std::function<bool(RouteGraph const&, std::uint32_t)>;

constexpr std::size_t most_graphs = 256;

// The waters of the examples, each made once.
class Waters {
 public:
  Waters(model::Design const& design, explore::Histories const& histories)
      : design_(design), histories_(histories), outlets_(body::outlet_cells(design)) {}

  std::optional<render::BodyWay> way(explore::Example const& example, model::InletId inlet,
                                     model::ProfileId profile, Goal const& is_goal) {
    if (!example.water || made_ == most_graphs) return std::nullopt;
    ++made_;
    auto const& moment = moment_of(*example.water);
    body::Surroundings const here(moment.arrangement, moment.field, design_.profiles[profile]);
    auto const graph =
        body::route_graph(here, body::entries(here, design_.inlets[inlet].cells), outlets_);
    auto const trail = body::shortest_trail(
        graph, [&](std::uint32_t position) { return is_goal(graph, position); });
    if (!trail) return std::nullopt;
    render::BodyWay way;
    for (auto position : trail->positions) way.positions.push_back(graph.positions[position]);
    for (auto step : trail->steps) way.steps.push_back(graph.steps[step]);
    return way;
  }

 private:
  struct Moment {
    model::Arrangement arrangement;
    water::Field field;
  };

  Moment const& moment_of(std::uint32_t water) {
    auto& moment = moments_[water];
    if (!moment)
      moment = std::make_unique<Moment>(
          Moment{{design_, histories_.settings[histories_.waters[water].setting]},
                 explore::field_of(design_, histories_, water)});
    return *moment;
  }

  model::Design const& design_;
  explore::Histories const& histories_;
  body::OutletCells outlets_;
  std::map<std::uint32_t, std::unique_ptr<Moment>> moments_;
  std::size_t made_ = 0;
};

std::optional<render::BodyWay> way_to(findings::Finding const& finding, Waters& waters) {
  bool const is_met = !finding.inlets.empty() && !finding.profiles.empty() &&
                      !finding.examples.empty() && !finding.cells.empty() &&
                      !model::is_of_switching(finding.kind);
  if (!is_met) return std::nullopt;
  return waters.way(finding.examples.front(), finding.inlets.front(), finding.profiles.front(),
                    [&](RouteGraph const& graph, std::uint32_t position) {
                      return std::binary_search(finding.cells.begin(), finding.cells.end(),
                                                graph.positions[position].feet);
                    });
}

bool is_rest(body::End end) {
  return end == body::End::dry || end == body::End::still || end == body::End::pinned;
}

// To where it stays for good; else, where it goes round for ever, to where it cannot get out any
// more; else out of the drawing, else to the first of its outlets.
std::optional<render::BodyWay> way_to(verdicts::JudgedExpectation const& expectation,
                                      Waters& waters) {
  if (!expectation.example || !expectation.route) return std::nullopt;
  auto const& route = *expectation.route;
  Goal const is_trap = [&](RouteGraph const& graph, std::uint32_t position) {
    return std::binary_search(route.trapped.begin(), route.trapped.end(),
                              graph.positions[position].feet);
  };
  Goal const is_end = [&](RouteGraph const& graph, std::uint32_t position) {
    if (!route.trapped.empty()) return is_rest(graph.ends[position]) && is_trap(graph, position);
    if (route.spills) return graph.ends[position] == body::End::spill;
    return !route.outlets.empty() && graph.outlets[position] == route.outlets.front();
  };
  auto const way = [&](Goal const& goal) {
    return waters.way(*expectation.example, *expectation.inlet, *expectation.profile, goal);
  };
  auto found = way(is_end);
  return found || route.trapped.empty() ? found : way(is_trap);
}

}  // namespace

render::JudgedSubject with_body_ways(render::Subject const& subject, Judgement const& judgement) {
  render::JudgedSubject judged{subject, judgement, {}, {}};
  Waters waters(subject.design, judgement.histories);
  for (auto const& finding : judgement.findings)
    judged.of_findings.push_back(way_to(finding, waters));
  for (auto const& expectation : judgement.expectations)
    judged.of_expectations.push_back(way_to(expectation, waters));
  return judged;
}

}  // namespace leat::cli
