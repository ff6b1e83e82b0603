#include <algorithm>

#include "engine/compare/changes.hpp"

namespace leat::compare {

namespace {

bool are_of_the_same(Duration const& before, Duration const& after, Matching const& same) {
  if (before.kind != after.kind) return false;
  if (before.kind == Duration::Kind::trip)
    return same.inlets[before.inlet] == after.inlet &&
           same.profiles[before.profile] == after.profile;
  return same.signals[before.event] == after.event && before.goes_on == after.goes_on;
}

// Longer is worse; without a bound is longer than any.
Change change_of(std::optional<int> before, std::optional<int> after) {
  if (before == after) return Change::same;
  if (!after) return Change::worse;
  if (!before) return Change::better;
  return *after > *before ? Change::worse : Change::better;
}

}  // namespace

void compare_times(Sides const& sides, Comparison& comparison) {
  auto const& before = sides.before.durations;
  auto const& after = sides.after.durations;
  std::vector<bool> is_known(after.size(), false);
  for (std::size_t b = 0; b < before.size(); ++b) {
    auto const at = std::find_if(after.begin(), after.end(), [&](Duration const& a) {
      return are_of_the_same(before[b], a, sides.matching);
    });
    if (at == after.end()) {
      // A change that moves no cell any more asks for no time.
      if (before[b].kind != Duration::Kind::trip)
        comparison.times.push_back({Change::better, b, {}});
      continue;
    }
    auto const a = static_cast<std::size_t>(at - after.begin());
    is_known[a] = true;
    auto const change = change_of(before[b].ticks, after[a].ticks);
    if (change != Change::same) comparison.times.push_back({change, b, a});
  }
  for (std::size_t a = 0; a < after.size(); ++a) {
    if (!is_known[a] && after[a].kind != Duration::Kind::trip)
      comparison.times.push_back({Change::other, {}, a});
  }
}

}  // namespace leat::compare
