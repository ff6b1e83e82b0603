#include <algorithm>

#include "engine/compare/changes.hpp"

namespace leat::compare {

namespace {

// Where it is not known what can come about, what differs may never do so.
void forget_what_may_never_be(Ground const& ground, Comparison& comparison) {
  if (ground.conditions().is_reachable_known()) return;
  comparison.routes.clear();
  comparison.findings.clear();
  comparison.values.clear();
  comparison.lanes_changed = 0;
}

}  // namespace

Comparison compare(Behaviour const& before, Behaviour const& after, Matching const& matching,
                   Ground& ground) {
  Comparison comparison;
  Sides const sides{before, after, matching, ground};
  compare_routes(sides, comparison);
  compare_findings(sides, comparison);
  compare_times(sides, comparison);
  compare_values(sides, comparison);
  forget_what_may_never_be(ground, comparison);
  compare_claims(sides, comparison);
  comparison.is_proved = before.is_whole() && after.is_whole() && ground.is_whole() &&
                         !comparison.is_cut && !comparison.is_unlike_elsewhere;
  return comparison;
}

Change gravest(Comparison const& comparison) {
  auto most = Change::same;
  auto const take = [&](auto const& changes) {
    for (auto const& change : changes) most = std::max(most, change.change);
  };
  take(comparison.routes);
  take(comparison.findings);
  take(comparison.times);
  take(comparison.claims);
  take(comparison.parts);
  return most;
}

namespace {

template <class Id>
void add_shifts(model::Design const& before, model::Design const& after,
                std::vector<model::Port> const& ports_before,
                std::vector<model::Port> const& ports_after, Counterparts<Id> const& same,
                std::vector<model::Place>& shifts) {
  for (std::size_t i = 0; i < same.size(); ++i) {
    if (!same[i] || ports_before[i].cells.empty() || ports_after[*same[i]].cells.empty()) continue;
    auto const from = before.grid.place(ports_before[i].cells.front());
    auto const to = after.grid.place(ports_after[*same[i]].cells.front());
    shifts.push_back({to.x - from.x, to.y - from.y, to.z - from.z});
  }
}

}  // namespace

std::optional<model::Place> shift_of(model::Design const& before, model::Design const& after,
                                     Matching const& matching) {
  std::vector<model::Place> shifts;
  add_shifts(before, after, before.inlets, after.inlets, matching.inlets, shifts);
  add_shifts(before, after, before.outlets, after.outlets, matching.outlets, shifts);
  bool const is_one = !shifts.empty() && std::all_of(shifts.begin(), shifts.end(), [&](auto shift) {
    return shift == shifts.front();
  });
  return is_one ? std::optional(shifts.front()) : std::nullopt;
}

}  // namespace leat::compare
