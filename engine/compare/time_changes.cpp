#include <map>
#include <tuple>

#include "engine/compare/changes.hpp"

namespace leat::compare {

namespace {

// What a time is of, in the ids after; none where there is no such thing after.
using Subject = std::tuple<Duration::Kind, model::InletId, model::ProfileId, model::SignalId, bool>;

Subject subject_of(Duration const& after) {
  return {after.kind, after.inlet, after.profile, after.event, after.goes_on};
}

std::optional<Subject> told_after(Duration duration, Matching const& same) {
  if (duration.kind == Duration::Kind::trip) {
    auto const inlet = same.inlets[duration.inlet];
    auto const profile = same.profiles[duration.profile];
    if (!inlet || !profile) return std::nullopt;
    duration.inlet = *inlet;
    duration.profile = *profile;
  } else {
    auto const event = same.signals[duration.event];
    if (!event) return std::nullopt;
    duration.event = *event;
  }
  return subject_of(duration);
}

// Longer is worse; without a bound is longer than any. What is known of one side alone is neither.
Change change_of(Duration const& before, Duration const& after) {
  if (!before.is_known || !after.is_known)
    return before.is_known == after.is_known ? Change::same : Change::other;
  if (before.ticks == after.ticks) return Change::same;
  if (!after.ticks) return Change::worse;
  if (!before.ticks) return Change::better;
  return *after.ticks > *before.ticks ? Change::worse : Change::better;
}

// Of a change that moves cells on one side alone; of what is not known there is nothing to tell.
bool is_told_alone(Duration const& duration) {
  return duration.is_known && duration.kind != Duration::Kind::trip;
}

}  // namespace

void compare_times(Sides const& sides, Comparison& comparison) {
  auto const& before = sides.before.durations;
  auto const& after = sides.after.durations;
  std::map<Subject, std::size_t> is_after;
  for (std::size_t a = 0; a < after.size(); ++a) is_after.emplace(subject_of(after[a]), a);
  std::vector<bool> is_met(after.size(), false);
  for (std::size_t b = 0; b < before.size(); ++b) {
    auto const subject = told_after(before[b], sides.matching);
    auto const at = subject ? is_after.find(*subject) : is_after.end();
    if (at == is_after.end()) {
      // A change that moves no cell any more asks for no time.
      if (is_told_alone(before[b])) comparison.times.push_back({Change::better, b, {}});
      continue;
    }
    is_met[at->second] = true;
    auto const change = change_of(before[b], after[at->second]);
    if (change != Change::same) comparison.times.push_back({change, b, at->second});
  }
  for (std::size_t a = 0; a < after.size(); ++a) {
    if (!is_met[a] && is_told_alone(after[a])) comparison.times.push_back({Change::other, {}, a});
  }
}

}  // namespace leat::compare
