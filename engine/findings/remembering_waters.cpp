#include <algorithm>
#include <map>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

std::vector<Cell> cells_that_differ(explore::Histories const& histories,
                                    std::vector<std::uint32_t> const& waters) {
  auto const& first = histories.waters[waters.front()].field;
  std::vector<Cell> cells;
  for (Cell c = 0; c < first.size(); ++c) {
    bool const differs = std::any_of(waters.begin(), waters.end(), [&](std::uint32_t water) {
      return histories.waters[water].field[c] != first[c];
    });
    if (differs) cells.push_back(c);
  }
  return cells;
}

bool routes_differ(tables::RouteTable const& routes, std::vector<std::uint32_t> const& waters,
                   Finding& finding) {
  bool differ = false;
  for (model::InletId inlet = 0; inlet < routes.inlets(); ++inlet) {
    bool inlet_differs = false;
    for (model::ProfileId profile = 0; profile < routes.profiles(); ++profile) {
      auto const& first = routes.at(waters.front(), inlet, profile);
      inlet_differs |= std::any_of(waters.begin(), waters.end(), [&](std::uint32_t water) {
        return routes.at(water, inlet, profile) != first;
      });
    }
    if (inlet_differs) finding.inlets.push_back(inlet);
    differ = differ || inlet_differs;
  }
  return differ;
}

// The first node whose row is already known with another water, and the node it is known from;
// where routes differ, they differ between these two.
void name_two_ways(Explored const& explored, tables::RouteTable const& by_water, Finding& finding) {
  std::map<logic::Row, std::uint32_t> first_of;
  bool const is_warning = finding.severity == model::Severity::warning;
  for (std::uint32_t node = 0; node < explored.histories.nodes.size(); ++node) {
    auto const row = explored.row_of(node);
    if (!finding.rows.contains(row)) continue;
    auto const [known, is_new] = first_of.try_emplace(row, node);
    std::vector<std::uint32_t> const two{explored.histories.nodes[known->second].water,
                                         explored.histories.nodes[node].water};
    Finding between;
    if (is_new || two[0] == two[1] || (is_warning && !routes_differ(by_water, two, between)))
      continue;
    finding.examples = {explore::example_of(explored, known->second),
                        explore::example_of(explored, node)};
    return;
  }
}

}  // namespace

// Situations whose waters differ at the same cells and to the same effect are one cause.
std::vector<Finding> remembering_waters(Explored const& explored,
                                        tables::RouteTable const& by_water) {
  if (!explored.histories.is_followed) return {};
  std::map<std::pair<std::vector<Cell>, std::vector<model::InletId>>, Finding> causes;
  auto const& situations = explored.combinations.situations;
  for (std::uint32_t situation = 0; situation < situations.size(); ++situation) {
    auto const& waters = situations[situation];
    if (waters.size() < 2) continue;
    auto finding = finding_of(FindingKind::remembering_water);
    finding.cells = cells_that_differ(explored.histories, waters);
    if (!routes_differ(by_water, waters, finding)) finding.severity = model::Severity::note;
    finding.rows = explored.combinations.rows_where([&](auto s) { return s == situation; });
    finding.measured = static_cast<int>(waters.size());
    auto const [cause, is_new] = causes.try_emplace({finding.cells, finding.inlets}, finding);
    if (is_new) continue;
    cause->second.rows |= finding.rows;
    cause->second.measured = std::max(cause->second.measured, finding.measured);
  }
  std::vector<Finding> findings;
  for (auto& [key, finding] : causes) {
    name_two_ways(explored, by_water, finding);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace leat::findings
