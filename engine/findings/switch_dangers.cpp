#include <map>

#include "engine/findings/families.hpp"

namespace leat::findings {

namespace {

using explore::Danger;

FindingKind kind_of(Danger::Kind kind) {
  switch (kind) {
    case Danger::Kind::misrouted:
      return FindingKind::misrouting_switch;
    case Danger::Kind::trapped:
      return FindingKind::stranding_switch;
    case Danger::Kind::spilled:
      return FindingKind::spilling_switch;
    case Danger::Kind::crushed:
      break;
  }
  return FindingKind::crushing_switch;
}

void add(Danger const& danger, Finding& finding) {
  insert_sorted(finding.inlets, danger.inlet);
  insert_sorted(finding.profiles, danger.profile);
  if (danger.outlet) insert_sorted(finding.outlets, *danger.outlet);
  for (auto c : danger.cells) insert_sorted(finding.cells, c);
}

}  // namespace

std::vector<Finding> switch_dangers(std::vector<explore::Guard> const& guards) {
  std::map<std::pair<FindingKind, model::SignalId>, Finding> causes;
  for (auto const& guard : guards) {
    for (auto const& [danger, rows, example] : guard.threats) {
      auto const kind = kind_of(danger.kind);
      auto const [cause, is_new] = causes.try_emplace({kind, guard.event}, finding_of(kind));
      auto& finding = cause->second;
      if (is_new) {
        finding.event = guard.event;
        finding.rows = logic::RowSet(rows.inputs());
        finding.examples = {example};
        finding.ticks = guard.wait;
      }
      if (example.flips.size() < finding.examples.front().flips.size())
        finding.examples = {example};
      add(danger, finding);
      finding.rows |= rows;
      finding.ticks = explore::longer(guard.wait, finding.ticks);
    }
  }
  std::vector<Finding> findings;
  for (auto& [key, finding] : causes) findings.push_back(std::move(finding));
  return findings;
}

}  // namespace leat::findings
