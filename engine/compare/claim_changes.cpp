#include "engine/compare/changes.hpp"

namespace leat::compare {

namespace {

using verdicts::Truthfulness;

Change change_of(Truthfulness before, Truthfulness after) {
  if (before == after) return Change::same;
  if (after == Truthfulness::holds) return Change::better;
  if (before == Truthfulness::holds) return Change::worse;
  return Change::other;
}

}  // namespace

void compare_claims(Sides const& sides, Comparison& comparison) {
  auto const& before = sides.before.verdicts;
  auto const& after = sides.after.verdicts;
  std::vector<bool> is_known(after.size(), false);
  for (std::size_t b = 0; b < before.size(); ++b) {
    auto const same = sides.matching.expectations[b];
    if (!same) {
      comparison.claims.push_back({Change::other, b, {}});
      continue;
    }
    is_known[*same] = true;
    auto const change = change_of(before[b], after[*same]);
    if (change != Change::same) comparison.claims.push_back({change, b, *same});
  }
  for (std::size_t a = 0; a < after.size(); ++a) {
    if (is_known[a]) continue;
    bool const holds = after[a] == Truthfulness::holds;
    comparison.claims.push_back({holds ? Change::same : Change::worse, {}, a});
  }
}

}  // namespace leat::compare
