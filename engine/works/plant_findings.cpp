#include "engine/works/plant_findings.hpp"

#include <algorithm>

#include "engine/works/idle_signals.hpp"
#include "engine/works/knowledge.hpp"
#include "engine/works/logic_findings.hpp"
#include "engine/works/region_findings.hpp"
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

// Who goes round for ever is trapped, and routes that are told wider hide no trap.
bool may_be_trapped(WorksJudgement const& judged) {
  auto& diagram = judged.conditions->diagram();
  bool is_found = false;
  for (std::size_t i = 0; i < judged.passages.size() && !is_found; ++i)
    is_found = diagram.both(judged.passages[i].trapped, judged.conditions->reachable()) !=
               logic::Diagram::never;
  return is_found;
}

// Where routes are told wider than they are, what seems to have a way out may have none.
void endless_rounds(model::Design const& plant, WorksJudgement& judged) {
  if (!judged.passages.has_cycles()) return;
  if (!judged.may_be_wider && !judged.may_miss_traps) {
    for (model::ProfileId profile = 0; profile < plant.profiles.size(); ++profile)
      endless_rounds_of(profile, plant, judged);
  }
  if (judged.may_miss_traps || (judged.may_be_wider && may_be_trapped(judged)) ||
      judged.conditions->diagram().has_run_out())
    judged.kinds_left_out.push_back(FindingKind::endless_loop);
}

// Inlets of several islands: no island can tell it alone.
void tight_inlets(model::Design const& plant, WorksJudgement& judged) {
  auto& diagram = judged.conditions->diagram();
  auto const is_shared = inlets_in_several(judged.islands, plant.inlets.size());
  for (model::InletId inlet = 0; inlet < is_shared.size(); ++inlet) {
    for (model::ProfileId p = 0; is_shared[inlet] && p < plant.profiles.size(); ++p) {
      auto const arriving = judged.arrivals.at(inlet, p, judged.passages, diagram);
      auto const shows = diagram.both(diagram.both(judged.passages.barred_at(inlet, p), arriving),
                                      judged.conditions->reachable());
      if (shows == Diagram::never) continue;
      auto finding = findings::finding_of(FindingKind::tight_inlet);
      finding.inlets = {inlet};
      finding.profiles = {p};
      finding.cells = plant.inlets[inlet].cells;
      judged.findings.push_back({std::move(finding), shows, !judged.may_be_wider, true});
    }
  }
}

// What is wrong with the whole is given to acceptances as findings of junctions are
// (findings/accept.cpp): to one that covers all combinations in which it shows, or, where it can be
// parted, to each in turn those that are left. Acceptances that nothing answers to are told.
class Accepting {
 public:
  Accepting(model::Design const& plant, WorksJudgement& judged)
      : plant_(plant),
        judged_(judged),
        diagram_(judged.conditions->diagram()),
        is_answered_(plant.acceptances.size(), false) {
    for (auto const& piece : pieces_of(judged)) {
      for (auto const& finding : piece.judged->findings) {
        if (finding.accepted_by) is_answered_[*finding.accepted_by] = true;
      }
    }
  }

  void accept() {
    auto const count = judged_.findings.size();
    for (std::size_t f = 0; f < count; ++f) {
      if (is_answered_.empty() || accept_whole(judged_.findings[f])) continue;
      if (judged_.findings[f].can_be_parted) part(f);
    }
  }

  void tell_stale() {
    for (std::size_t a = 0; a < is_answered_.size(); ++a) {
      if (is_answered_[a] || !was_looked_for(plant_.acceptances[a].kind, judged_)) continue;
      auto finding = findings::finding_of(FindingKind::stale_acceptance);
      finding.acceptance = a;
      judged_.findings.push_back({std::move(finding), judged_.conditions->reachable()});
    }
  }

 private:
  bool speaks_of(std::size_t acceptance, findings::Finding const& finding) const {
    auto const& accepted = plant_.acceptances[acceptance];
    auto const& cells = finding.cells;
    return accepted.kind == finding.kind &&
           (!accepted.cell || std::binary_search(cells.begin(), cells.end(), *accepted.cell));
  }
  Function where(std::size_t acceptance) const {
    auto const& condition = plant_.acceptances[acceptance].condition;
    return condition ? judged_.conditions->of(*condition) : Diagram::always;
  }

  bool accept_whole(PlantFinding& found) {
    auto const shows = diagram_.both(found.condition, judged_.conditions->reachable());
    for (std::size_t a = 0; a < is_answered_.size(); ++a) {
      if (!speaks_of(a, found.finding)) continue;
      auto const there = where(a);
      if (there != Diagram::always && diagram_.both(shows, !there) != Diagram::never) continue;
      is_answered_[a] = true;
      if (!found.finding.accepted_by) found.finding.accepted_by = a;
    }
    return found.finding.accepted_by.has_value();
  }

  void part(std::size_t f) {
    for (std::size_t a = 0; a < is_answered_.size(); ++a) {
      auto left = judged_.findings[f];
      if (!speaks_of(a, left.finding)) continue;
      auto taken = left;
      taken.condition = diagram_.both(left.condition, where(a));
      if (taken.condition == Diagram::never) continue;
      is_answered_[a] = true;
      taken.finding.accepted_by = a;
      judged_.findings[f].condition = diagram_.both(left.condition, !where(a));
      if (judged_.findings[f].condition == Diagram::never) {
        judged_.findings[f] = std::move(taken);
        return;
      }
      judged_.findings.push_back(std::move(taken));
    }
  }

  model::Design const& plant_;
  WorksJudgement& judged_;
  Diagram& diagram_;
  std::vector<bool> is_answered_;  // by acceptance
};

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
  tight_inlets(plant, judged);
  region_findings(plant, judged);
  Accepting accepting(plant, judged);
  accepting.accept();
  accepting.tell_stale();
}

}  // namespace leat::works
