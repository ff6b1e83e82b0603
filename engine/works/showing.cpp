#include "engine/works/showing.hpp"

#include <algorithm>

#include "engine/contract.hpp"

namespace leat::works {

namespace {

// From where the event can be switched by what stands for it where this copy does.
Function switchable(WorksJudgement const& judged, Copy const& copy, model::SignalId event) {
  auto& conditions = *judged.conditions;
  if (!conditions.is_reachable_known()) return conditions.reachable();
  auto const& first = first_copy(judged.islands, copy.part).signals;
  auto const own = std::find(first.begin(), first.end(), event);
  require(own != first.end(), "showing: an event told in the plant's ids");
  return conditions.flippable(copy.signals[static_cast<std::size_t>(own - first.begin())]);
}

// While the piece is in one of these rows where this copy stands.
Function in_rows(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 logic::RowSet const& rows) {
  auto const& own = piece.region
                        ? judged.by_regions[piece.part]->regions[*piece.region].own_variables
                        : judged.own_variables[piece.part];
  auto& conditions = *judged.conditions;
  return conditions.of(rows, inputs_of(copy, own, conditions));
}

// While a body comes to where this copy has the inlet.
Function arriving(WorksJudgement const& judged, Copy const& copy, model::InletId inlet,
                  model::ProfileId profile, bool counts_joins) {
  auto const& first = first_copy(judged.islands, copy.part).inlets;
  auto const own = std::find(first.begin(), first.end(), inlet);
  require(own != first.end(), "showing: inlets told in the plant's ids");
  auto const there = copy.inlets[static_cast<std::size_t>(own - first.begin())];
  if (!counts_joins && !judged.arrivals.is_entrance(there)) return logic::Diagram::never;
  return judged.arrivals.at(there, profile, judged.passages, judged.conditions->diagram());
}

// While a body that meets it comes.
Function met(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
             Occasion const& occasion) {
  auto& diagram = judged.conditions->diagram();
  auto const rows = in_rows(judged, piece, copy, occasion.rows);
  if (occasion.inlets.empty() || occasion.profiles.empty()) return rows;
  auto some = logic::Diagram::never;
  auto const add = [&](model::InletId inlet, model::ProfileId profile, Function when) {
    auto const comes = arriving(judged, copy, inlet, profile, occasion.counts_joins);
    some = diagram.either(some, diagram.both(comes, when));
  };
  for (auto const& [inlet, profile, own_rows, waters] : occasion.meetings)
    add(inlet, profile, in_rows(judged, piece, copy, own_rows));
  if (occasion.meetings.empty()) {
    for (auto inlet : occasion.inlets)
      for (auto profile : occasion.profiles) add(inlet, profile, logic::Diagram::always);
  }
  return diagram.both(rows, some);
}

}  // namespace

// An outlet is never reached whoever comes.
Occasion occasion_of(findings::Finding const& finding) {
  if (finding.kind == model::FindingKind::unreached_outlet)
    return {finding.rows, finding.event, {}, {}};
  return {finding.rows, finding.event, finding.inlets, finding.profiles, finding.meetings};
}

Function showing(WorksJudgement const& judged, Piece const& piece, Copy const& copy,
                 Occasion const& occasion) {
  auto& diagram = judged.conditions->diagram();
  auto const shows = met(judged, piece, copy, occasion);
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
