#include "engine/compare/deviations.hpp"

#include <algorithm>
#include <map>

#include "engine/logic/minimal_cover.hpp"
#include "engine/works/destinations.hpp"

namespace leat::compare {

using findings::Finding;
using logic::Diagram;
using model::FindingKind;

namespace {

class Deviations {
 public:
  Deviations(int inputs, Ground& ground) : inputs_(inputs), ground_(ground) {}

  void put_rows(Finding& finding, Function where) {
    if (inputs_ == 0) return;
    finding.rows = works::rows_of(ground_.diagram(), where, inputs_);
    auto const reachable = works::rows_of(ground_.diagram(), ground_.reachable(), inputs_);
    finding.condition = logic::minimal_cover(finding.rows, finding.rows | ~reachable).cubes;
  }

  void add(Finding finding) { found_.push_back(std::move(finding)); }
  std::vector<Finding> take() { return std::move(found_); }

 private:
  int inputs_;
  Ground& ground_;
  std::vector<Finding> found_;
};

Finding of_lane(FindingKind kind, model::InletId inlet, model::ProfileId profile) {
  auto finding = findings::finding_of(kind);
  finding.inlets = {inlet};
  finding.profiles = {profile};
  return finding;
}

// Routes of one inlet and body differ together.
void add_routes(Comparison const& comparison, Ground& ground, Deviations& deviations) {
  std::map<std::pair<model::InletId, model::ProfileId>, Function> where;
  for (auto const& change : comparison.routes) {
    auto& condition =
        where.try_emplace({change.inlet, change.profile}, Diagram::never).first->second;
    condition = ground.diagram().either(condition, change.condition);
  }
  for (auto const& [lane, condition] : where) {
    auto finding = of_lane(FindingKind::unlike_record, lane.first, lane.second);
    deviations.put_rows(finding, condition);
    deviations.add(std::move(finding));
  }
}

void add_findings(Behaviour const& recorded, Behaviour const& now, Comparison const& comparison,
                  Ground& ground, Deviations& deviations) {
  std::map<std::pair<FindingKind, FindingKind>, Function> where;
  for (auto const& change : comparison.findings) {
    auto const about =
        change.after ? now.sightings[*change.after].kind : recorded.sightings[*change.before].kind;
    auto const kind = change.before ? FindingKind::unlike_record : FindingKind::unrecorded;
    auto& condition = where.try_emplace({kind, about}, Diagram::never).first->second;
    condition =
        ground.diagram().either(condition, ground.diagram().either(change.come, change.gone));
  }
  for (auto const& [kinds, condition] : where) {
    auto finding = findings::finding_of(kinds.first);
    finding.about = kinds.second;
    deviations.put_rows(finding, condition);
    deviations.add(std::move(finding));
  }
}

}  // namespace

std::vector<std::size_t> unrecorded_passages(Behaviour const& recorded, Behaviour const& now) {
  std::vector<std::size_t> unknown;
  for (std::size_t i = 0; i < now.passages.size(); ++i) {
    auto const& passage = now.passages[i];
    bool const is_known =
        std::any_of(recorded.passages.begin(), recorded.passages.end(), [&](auto const& known) {
          return known.inlet == passage.inlet && known.profile == passage.profile;
        });
    if (!is_known) unknown.push_back(i);
  }
  return unknown;
}

std::vector<Finding> deviations(Behaviour const& recorded, Behaviour const& now,
                                Comparison const& comparison, std::size_t stale, int inputs,
                                Ground& ground) {
  Deviations deviations(inputs, ground);
  add_routes(comparison, ground, deviations);
  add_findings(recorded, now, comparison, ground, deviations);
  for (auto i : unrecorded_passages(recorded, now)) {
    auto finding = of_lane(FindingKind::unrecorded, now.passages[i].inlet, now.passages[i].profile);
    deviations.put_rows(finding, ground.reachable());
    deviations.add(std::move(finding));
  }
  if (!comparison.times.empty()) {
    auto finding = findings::finding_of(FindingKind::unlike_record);
    finding.severity = model::Severity::warning;
    finding.measured = static_cast<int>(comparison.times.size());
    deviations.put_rows(finding, ground.reachable());
    deviations.add(std::move(finding));
  }
  if (stale > 0) {
    auto finding = findings::finding_of(FindingKind::stale_record);
    finding.measured = static_cast<int>(stale);
    deviations.put_rows(finding, ground.reachable());
    deviations.add(std::move(finding));
  }
  return deviations.take();
}

}  // namespace leat::compare
