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

Function in_part(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 logic::RowSet const& rows) {
  auto& conditions = *judged.conditions;
  return conditions.of(rows, inputs_of(copy, judged.own_variables[piece.part], conditions));
}

// From where the event can be switched by what stands for it where this copy does.
Function switchable(WorksJudgement const& judged, Copy const& copy, model::SignalId event) {
  auto& conditions = *judged.conditions;
  if (!conditions.is_reachable_known()) return conditions.reachable();
  auto const& first = first_copy(judged.islands, copy.part).signals;
  auto const own = std::find(first.begin(), first.end(), event);
  require(own != first.end(), "showing: an event told in the plant's ids");
  return conditions.flippable(copy.signals[static_cast<std::size_t>(own - first.begin())]);
}

}  // namespace

Function showing(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 Occasion const& occasion) {
  auto const in_rows = piece.region ? in_region(judged, piece, copy, occasion.rows)
                                    : in_part(judged, piece, copy, occasion.rows);
  if (!occasion.event) return in_rows;
  return judged.conditions->diagram().both(in_rows, switchable(judged, copy, *occasion.event));
}

Function showing(WorksJudgement const& judged, Piece const& piece,
                 findings::Finding const& finding) {
  auto shows = logic::Diagram::never;
  for (auto c : judged.islands.parts[piece.part].copies) {
    auto const& copy = judged.islands.copies[c];
    shows = judged.conditions->diagram().either(
        shows, showing(judged, piece, copy, {finding.rows, finding.event}));
  }
  return shows;
}

bool can_show(WorksJudgement const& judged, Piece const& piece, Occasion const& occasion) {
  auto& diagram = judged.conditions->diagram();
  auto const reachable = judged.conditions->reachable();
  for (auto c : judged.islands.parts[piece.part].copies) {
    auto const& copy = judged.islands.copies[c];
    auto const shows = diagram.both(showing(judged, piece, copy, occasion), reachable);
    if (shows != logic::Diagram::never || diagram.has_run_out()) return true;
  }
  return false;
}

}  // namespace leat::works
