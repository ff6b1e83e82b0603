#include "engine/works/plant_findings.hpp"

#include <algorithm>

#include "engine/works/idle_signals.hpp"
#include "engine/works/logic_findings.hpp"
#include "engine/works/unreached_outlets.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

// Rounds of joins that bodies of a profile can come to and not leave. Told once a profile, with the
// inlets that they enter by and those that the rounds lead through.
void endless_rounds_of(model::ProfileId profile, model::Design const& plant,
                       WorksJudgement& judged) {
  auto& diagram = judged.conditions->diagram();
  auto const& passages = judged.passages;
  auto finding = findings::finding_of(FindingKind::endless_loop);
  auto shows = Diagram::never;
  for (std::size_t p = 0; p < passages.size(); ++p) {
    if (passages.profile(p) != profile) continue;
    auto const circling =
        diagram.both(passages.of(Prospect::circling, p), judged.conditions->reachable());
    if (circling != Diagram::never) findings::insert_sorted(finding.inlets, passages.inlet(p));
    shows = diagram.either(shows, circling);
  }
  if (shows == Diagram::never || diagram.has_run_out()) return;
  for (auto const& join : plant.joins) {
    auto const round = passages.from(Prospect::round, join.inlet, profile);
    if (diagram.both(round, shows) == Diagram::never) continue;
    for (auto c : plant.inlets[join.inlet].cells) findings::insert_sorted(finding.cells, c);
  }
  finding.profiles.push_back(profile);
  judged.findings.push_back({std::move(finding), shows});
}

// Where routes are told wider than they are, what seems to have a way out may have none.
void endless_rounds(model::Design const& plant, WorksJudgement& judged) {
  if (!judged.passages.has_cycles()) return;
  if (!judged.may_be_wider && !judged.may_miss_traps) {
    for (model::ProfileId profile = 0; profile < plant.profiles.size(); ++profile)
      endless_rounds_of(profile, plant, judged);
  }
  if (judged.may_be_wider || judged.may_miss_traps || judged.conditions->diagram().has_run_out())
    judged.kinds_left_out.push_back(FindingKind::endless_loop);
}

// Acceptances without a condition cover what is wrong with the whole, too; those that nothing
// answers to are told.
void accept(model::Design const& plant, WorksJudgement& judged) {
  auto& found = judged.findings;
  std::vector<bool> is_answered(plant.acceptances.size(), false);
  for (auto const& piece : pieces_of(judged)) {
    for (auto const& finding : piece.judged->findings) {
      if (finding.accepted_by) is_answered[*finding.accepted_by] = true;
    }
  }
  for (auto& [finding, condition] : found) {
    for (std::size_t a = 0; a < is_answered.size() && !finding.accepted_by; ++a) {
      auto const& acceptance = plant.acceptances[a];
      bool const is_there =
          !acceptance.cell ||
          std::binary_search(finding.cells.begin(), finding.cells.end(), *acceptance.cell);
      bool const covers = acceptance.kind == finding.kind && is_there && !acceptance.condition;
      if (covers) finding.accepted_by = a;
      is_answered[a] = is_answered[a] || covers;
    }
  }
  for (std::size_t a = 0; a < is_answered.size(); ++a) {
    if (is_answered[a] || !are_findings_complete(judged)) continue;
    auto finding = findings::finding_of(FindingKind::stale_acceptance);
    finding.acceptance = a;
    found.push_back({std::move(finding), judged.conditions->reachable()});
  }
}

}  // namespace

void find_in_plant(model::Design const& plant, WorksJudgement& judged) {
  auto const& conditions = *judged.conditions;
  auto seen = judged.passages.reached(conditions.variables().size(), conditions.reachable());
  unreached_outlets(plant, seen, judged);
  endless_rounds(plant, judged);
  for (auto& finding : idle_signals(plant, seen, judged, judged.kinds_left_out))
    judged.findings.push_back(std::move(finding));
  for (auto& finding : logic_findings(plant, judged, judged.kinds_left_out))
    judged.findings.push_back(std::move(finding));
  accept(plant, judged);
}

}  // namespace leat::works
