#include "lang/cli/picturing.hpp"

#include <algorithm>

#include "engine/body/endings.hpp"
#include "engine/body/surroundings.hpp"
#include "lang/render/example.hpp"
#include "lang/render/finding_sentences.hpp"

namespace leat::cli {

namespace {

render::WayEnd end_of(body::EndingKind kind) {
  switch (kind) {
    case body::EndingKind::outlet:
      return render::WayEnd::delivered;
    case body::EndingKind::spill:
      return render::WayEnd::spilled;
    case body::EndingKind::rest:
      return render::WayEnd::rests;
    case body::EndingKind::loop:
      break;
  }
  return render::WayEnd::circles;
}

render::Way way_of(model::Grid const& grid, body::RouteGraph const& graph,
                   body::Ending const& ending) {
  render::Way way;
  way.end = end_of(ending.kind);
  for (std::size_t i = 0; i < ending.trail.positions.size(); ++i) {
    auto const feet = graph.positions[ending.trail.positions[i]].feet;
    bool const is_sure = i == 0 || graph.steps[ending.trail.steps[i - 1]].is_sure;
    way.stops.push_back({grid.place(feet), is_sure});
  }
  return way;
}

// Whether a finding shows in this water: in one of those it names, or in any if it names none.
bool shows_in(Judgement const& judged, model::Design const& design,
              findings::Finding const& finding, Solved const& solved) {
  if (finding.waters.empty()) return true;
  return std::any_of(finding.waters.begin(), finding.waters.end(), [&](std::uint32_t water) {
    auto const& known = judged.histories.waters[water];
    model::Arrangement const there(design, judged.histories.settings[known.setting]);
    for (model::FillId f = 0; f < design.fills.size(); ++f) {
      if (!(there.made_of(f) == solved.arrangement.made_of(f))) return false;
    }
    return explore::field_of(design, judged.histories, water) == solved.field;
  });
}

// Where it is pinned: its cells, or else those of the outlets and inlets that it is about.
std::vector<model::Cell> cells_of(model::Design const& design, findings::Finding const& finding) {
  if (!finding.cells.empty()) return finding.cells;
  std::vector<model::Cell> cells;
  for (auto outlet : finding.outlets) {
    if (!design.outlets[outlet].cells.empty())
      findings::insert_sorted(cells, design.outlets[outlet].cells.front());
  }
  return cells;
}

}  // namespace

render::PictureScene picture_of(render::Subject const& subject, Situation const& situation) {
  auto const& solved = situation.solved;
  return {subject,
          &solved.arrangement,
          water::survey({solved.arrangement, solved.field}),
          render::situation_text(subject, situation.assignment, situation.flips),
          {},
          {}};
}

render::InletWays ways_of(render::Subject const& subject, Solved const& solved,
                          model::InletId inlet, model::ProfileId profile) {
  auto const& design = subject.design;
  body::Surroundings const here(solved.arrangement, solved.field, design.profiles[profile]);
  auto const graph = body::route_graph(here, body::entries(here, design.inlets[inlet].cells),
                                       body::outlet_cells(design));
  constexpr std::size_t most_ways = 12;
  render::InletWays ways{inlet, profile, {}};
  for (auto const& ending : body::endings(graph)) {
    if (ways.ways.size() == most_ways) break;
    ways.ways.push_back(way_of(design.grid, graph, ending));
  }
  return ways;
}

std::vector<render::Pin> pins_of(render::Subject const& subject, Judgement const& judged,
                                 Solved const& solved) {
  std::vector<render::Pin> pins;
  if (!judged.is_decided) return pins;
  auto const row = judged.combinations.row_of(solved.signals);
  for (auto i : render::telling_order(judged.findings)) {
    auto const& finding = judged.findings[i];
    if (finding.accepted_by || !finding.rows.contains(row)) continue;
    auto cells = cells_of(subject.design, finding);
    if (cells.empty() || !shows_in(judged, subject.design, finding, solved)) continue;
    pins.push_back({static_cast<int>(pins.size()) + 1, finding.severity, std::move(cells),
                    render::sentences_of(subject, finding).headline});
  }
  return pins;
}

}  // namespace leat::cli
