#include <algorithm>

#include "engine/compare/changes.hpp"

namespace leat::compare {

using logic::Diagram;

namespace {

constexpr std::size_t most_told = 1000;

// Ids before, told after; none where one of them has no counterpart.
template <class Id>
std::optional<std::vector<Id>> told(std::vector<Id> const& ids, Counterparts<Id> const& same) {
  std::vector<Id> result;
  for (auto id : ids) {
    if (!same[id]) return std::nullopt;
    result.push_back(*same[id]);
  }
  std::sort(result.begin(), result.end());
  return result;
}

template <class Id>
bool are_same(std::vector<Id> const& before, std::vector<Id> after, Counterparts<Id> const& same) {
  std::sort(after.begin(), after.end());
  return told(before, same) == after;
}

// Whether two sightings are of the same thing, wherever it lies.
bool are_alike(Sighting const& before, Sighting const& after, Matching const& same) {
  if (before.kind != after.kind || before.event.has_value() != after.event.has_value())
    return false;
  if (before.event && same.signals[*before.event] != after.event) return false;
  return are_same(before.inlets, after.inlets, same.inlets) &&
         are_same(before.outlets, after.outlets, same.outlets) &&
         are_same(before.profiles, after.profiles, same.profiles) &&
         are_same(before.signals, after.signals, same.signals);
}

// The sighting after that answers each one before: first of those that lie in the same number of
// cells and show in the same combinations, then of the rest, each time in order.
Counterparts<std::size_t> answers(Sides const& sides) {
  auto const& before = sides.before.sightings;
  auto const& after = sides.after.sightings;
  Counterparts<std::size_t> answer(before.size());
  std::vector<bool> is_taken(after.size(), false);
  for (bool is_strict : {true, false}) {
    for (std::size_t b = 0; b < before.size(); ++b) {
      if (answer[b]) continue;
      for (std::size_t a = 0; a < after.size() && !answer[b]; ++a) {
        if (is_taken[a] || !are_alike(before[b], after[a], sides.matching)) continue;
        if (is_strict && (before[b].cells.size() != after[a].cells.size() ||
                          before[b].condition != after[a].condition))
          continue;
        answer[b] = a;
        is_taken[a] = true;
      }
    }
  }
  return answer;
}

Change worth(Sighting const& sighting, bool has_come) {
  bool const is_neither =
      sighting.is_accepted || !sighting.is_proved || sighting.severity == model::Severity::note;
  if (is_neither) return Change::other;
  return has_come ? Change::worse : Change::better;
}

// Something that only one side has. What the other was not looked through for may be there too.
FindingChange one_sided(Sighting const& sighting, bool has_come, Sides const& sides) {
  auto const& other = has_come ? sides.before : sides.after;
  FindingChange change;
  change.is_known = other.was_looked_for(sighting.kind);
  change.change = change.is_known ? worth(sighting, has_come) : Change::other;
  (has_come ? change.come : change.gone) = sides.ground.widest(sighting.condition);
  return change;
}

void tell(FindingChange change, Sides const& sides, Comparison& comparison) {
  auto const where = change.come != Diagram::never ? change.come : change.gone;
  if (comparison.findings.size() == most_told) {
    comparison.is_cut = true;
    return;
  }
  change.example = sides.ground.nearest(where);
  comparison.findings.push_back(std::move(change));
}

void compare_pair(std::size_t b, std::size_t a, Sides const& sides, Comparison& comparison) {
  auto& ground = sides.ground;
  auto& diagram = ground.diagram();
  auto const& before = sides.before.sightings[b];
  auto const& after = sides.after.sightings[a];
  FindingChange change{Change::other,
                       b,
                       a,
                       ground.widest(diagram.both(before.condition, !after.condition)),
                       ground.widest(diagram.both(after.condition, !before.condition)),
                       {},
                       true};
  // What was written down of a revision does not tell of other places.
  bool const are_told = before.finding != nullptr && after.finding != nullptr;
  if (are_told && before.elsewhere != after.elsewhere) comparison.is_unlike_elsewhere = true;
  bool const is_lost = before.is_accepted && !after.is_accepted;
  bool const has_come = change.come != Diagram::never, is_gone = change.gone != Diagram::never;
  if (!is_lost && !has_come && !is_gone) return;
  if (is_lost && !has_come) change.come = ground.widest(after.condition);
  change.is_known = is_lost || (has_come ? sides.before : sides.after).was_looked_for(after.kind);
  bool const is_told_wider = has_come ? !after.is_proved : !before.is_proved;
  change.change =
      change.is_known && !is_told_wider ? worth(after, is_lost || has_come) : Change::other;
  tell(std::move(change), sides, comparison);
}

}  // namespace

void compare_findings(Sides const& sides, Comparison& comparison) {
  auto const answer = answers(sides);
  std::vector<bool> is_answer(sides.after.sightings.size(), false);
  for (std::size_t b = 0; b < answer.size(); ++b) {
    auto const& before = sides.before.sightings[b];
    if (answer[b]) {
      is_answer[*answer[b]] = true;
      compare_pair(b, *answer[b], sides, comparison);
    } else {
      auto change = one_sided(before, false, sides);
      change.before = b;
      tell(std::move(change), sides, comparison);
    }
  }
  for (std::size_t a = 0; a < is_answer.size(); ++a) {
    auto const& after = sides.after.sightings[a];
    if (is_answer[a]) continue;
    auto change = one_sided(after, true, sides);
    change.after = a;
    tell(std::move(change), sides, comparison);
  }
  std::stable_sort(comparison.findings.begin(), comparison.findings.end(),
                   [](auto const& a, auto const& b) { return a.change > b.change; });
}

}  // namespace leat::compare
