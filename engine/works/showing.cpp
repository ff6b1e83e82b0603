#include "engine/works/showing.hpp"

#include <algorithm>

#include "engine/contract.hpp"

namespace leat::works {

namespace {

Function in_region(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                   logic::RowSet const& rows) {
  auto& conditions = *judged.conditions;
  auto const& own = judged.by_regions[piece.part]->regions[*piece.region].own_variables;
  return conditions.of(rows, inputs_of(copy, own, conditions));
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

// While a body comes to one of the inlets where this copy has them.
Function arriving(WorksJudgement const& judged, Copy const& copy, Occasion const& occasion) {
  if (occasion.inlets.empty() || occasion.profiles.empty()) return logic::Diagram::always;
  auto const& first = first_copy(judged.islands, copy.part).inlets;
  auto some = logic::Diagram::never;
  for (auto inlet : occasion.inlets) {
    auto const own = std::find(first.begin(), first.end(), inlet);
    require(own != first.end(), "showing: inlets told in the plant's ids");
    auto const there = copy.inlets[static_cast<std::size_t>(own - first.begin())];
    if (!occasion.counts_joins && !judged.arrivals.is_entrance(there)) continue;
    auto& diagram = judged.conditions->diagram();
    for (auto profile : occasion.profiles)
      some = diagram.either(some, judged.arrivals.at(there, profile, judged.passages, diagram));
  }
  return some;
}

}  // namespace

// An outlet is never reached whoever comes.
Occasion occasion_of(findings::Finding const& finding) {
  if (finding.kind == model::FindingKind::unreached_outlet)
    return {finding.rows, finding.event, {}, {}};
  return {finding.rows, finding.event, finding.inlets, finding.profiles};
}

Function showing(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 Occasion const& occasion) {
  auto& diagram = judged.conditions->diagram();
  auto shows = piece.region ? in_region(judged, piece, copy, occasion.rows)
                            : in_part(judged, piece, copy, occasion.rows);
  shows = diagram.both(shows, arriving(judged, copy, occasion));
  if (!occasion.event) return shows;
  return diagram.both(shows, switchable(judged, copy, *occasion.event));
}

Occasion eased(WorksJudgement const& judged, Occasion occasion) {
  auto const& conditions = *judged.conditions;
  if (conditions.reachable() == logic::Diagram::always && !conditions.has_memory())
    occasion.event.reset();
  return occasion;
}

Function showing(WorksJudgement const& judged, Piece const& piece, Occasion const& occasion) {
  auto shows = logic::Diagram::never;
  for (auto c : judged.islands.parts[piece.part].copies) {
    auto const& copy = judged.islands.copies[c];
    shows = judged.conditions->diagram().either(shows, showing(judged, piece, copy, occasion));
  }
  return shows;
}

bool can_show(WorksJudgement const& judged, Piece const& piece, Occasion const& occasion) {
  auto& diagram = judged.conditions->diagram();
  auto const reachable = judged.conditions->reachable();
  for (auto c : judged.islands.parts[piece.part].copies) {
    auto const& copy = judged.islands.copies[c];
    auto const shows =
        diagram.both(showing(judged, piece, copy, eased(judged, occasion)), reachable);
    if (shows != logic::Diagram::never || diagram.has_run_out()) return true;
  }
  return false;
}

}  // namespace leat::works
