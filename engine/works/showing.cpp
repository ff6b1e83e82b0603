#include "engine/works/showing.hpp"

#include <algorithm>

namespace leat::works {

namespace {

Function in_region(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                   findings::Finding const& finding) {
  auto& conditions = *judged.conditions;
  auto& diagram = conditions.diagram();
  auto const& part = judged.islands.parts[piece.part];
  auto const& own = judged.by_regions[piece.part]->regions[*piece.region].own_variables;
  auto shows = conditions.of(finding.rows, inputs_of(copy, own, conditions));
  for (auto signal : support(part)) {
    if (std::find(own.begin(), own.end(), signal) != own.end()) continue;
    auto const value = conditions.of_signal(copy.signals[signal]);
    shows = diagram.both(shows, part.design.circuit.signals[signal].starts_on ? value : !value);
  }
  return shows;
}

}  // namespace

Function showing(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 findings::Finding const& finding) {
  if (piece.region) return in_region(judged, piece, copy, finding);
  auto& conditions = *judged.conditions;
  return conditions.of(finding.rows, inputs_of(copy, judged.own_variables[piece.part], conditions));
}

Function showing(WorksJudgement const& judged, Piece const& piece,
                 findings::Finding const& finding) {
  auto shows = logic::Diagram::never;
  for (auto const& copy : judged.islands.copies) {
    if (copy.part == piece.part)
      shows = judged.conditions->diagram().either(shows, showing(judged, piece, copy, finding));
  }
  return shows;
}

}  // namespace leat::works
