#include "engine/works/showing.hpp"

#include <algorithm>

#include "engine/contract.hpp"

namespace leat::works {

namespace {

Function in_region(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                   logic::RowSet const& rows) {
  auto& conditions = *judged.conditions;
  auto& diagram = conditions.diagram();
  auto const& part = judged.islands.parts[piece.part];
  auto const& own = judged.by_regions[piece.part]->regions[*piece.region].own_variables;
  auto shows = conditions.of(rows, inputs_of(copy, own, conditions));
  for (auto signal : support(part)) {
    if (std::find(own.begin(), own.end(), signal) != own.end()) continue;
    auto const value = conditions.of_signal(copy.signals[signal]);
    shows = diagram.both(shows, part.design.circuit.signals[signal].starts_on ? value : !value);
  }
  return shows;
}

}  // namespace

Function showing(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 logic::RowSet const& rows) {
  if (piece.region) return in_region(judged, piece, copy, rows);
  auto& conditions = *judged.conditions;
  return conditions.of(rows, inputs_of(copy, judged.own_variables[piece.part], conditions));
}

Function showing(WorksJudgement const& judged, Piece const& piece,
                 findings::Finding const& finding) {
  auto shows = logic::Diagram::never;
  for (auto c : judged.islands.parts[piece.part].copies) {
    auto const& copy = judged.islands.copies[c];
    shows = judged.conditions->diagram().either(shows, showing(judged, piece, copy, finding.rows));
  }
  return shows;
}

bool can_show(WorksJudgement const& judged, Piece const& piece, logic::RowSet const& rows,
              std::optional<model::SignalId> event) {
  auto& conditions = *judged.conditions;
  auto& diagram = conditions.diagram();
  auto const& first = first_copy(judged.islands, piece.part).signals;
  for (auto c : judged.islands.parts[piece.part].copies) {
    auto const& copy = judged.islands.copies[c];
    auto where = conditions.reachable();
    if (event && conditions.is_reachable_known()) {
      auto const own = std::find(first.begin(), first.end(), *event);
      require(own != first.end(), "can_show: an event told in the plant's ids");
      where = conditions.flippable(copy.signals[static_cast<std::size_t>(own - first.begin())]);
    }
    auto const shows = diagram.both(showing(judged, piece, copy, rows), where);
    if (shows != logic::Diagram::never || diagram.has_run_out()) return true;
  }
  return false;
}

}  // namespace leat::works
