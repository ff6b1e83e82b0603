#include "engine/body/travel.hpp"
#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

namespace {

// The longest trip of those spoken of in one water; none without bound.
std::optional<int> longest_spoken_of(model::Expectation const& expectation,
                                     explore::Clearing const& trips, std::size_t profiles) {
  std::optional<int> longest = 0;
  for (std::size_t i = 0; i < trips.size(); ++i) {
    auto const inlet = static_cast<model::InletId>(i / profiles);
    auto const profile = static_cast<model::ProfileId>(i % profiles);
    if (speaks_of(expectation, inlet, profile)) longest = explore::longer(longest, trips[i]);
  }
  return longest;
}

// Which waters can come with these rows.
std::vector<bool> waters_of(Results const& results, logic::RowSet const& rows) {
  auto const& combinations = results.explored.combinations;
  std::vector<bool> is_there(results.trips.size(), false);
  for (logic::Row row = 0; row < combinations.situation_of_row.size(); ++row) {
    if (!rows.contains(row)) continue;
    for (auto water : combinations.situations[combinations.situation_of_row[row]])
      is_there[water] = true;
  }
  return is_there;
}

JudgedExpectation judge_moment(model::Expectation const& expectation, Results const& results) {
  JudgedExpectation judged;
  std::optional<int> longest = 0;
  std::optional<explore::Example> moment;
  bool const is_known =
      travel_after_events(expectation, results, moment, [&](Travel const& travel) {
        bool const has_trap = body::outcome_of(travel.graph).has_trap;
        longest = explore::longer(
            longest, has_trap ? std::nullopt : body::longest_trip(travel.here, travel.graph));
      });
  judged.never_rests = !is_known;
  if (!is_known) return judged;
  judged.measured = longest;
  judged.verdict = Truthfulness::holds;
  if (!longest || *longest > expectation.ticks) name_moment(judged, results, std::move(moment));
  return judged;
}

}  // namespace

// Over every water at rest in the rows spoken of: the waters that keep bodies longer than claimed
// break it, and the longest of all is told.
JudgedExpectation judge_clearing(model::Expectation const& expectation, Results const& results,
                                 logic::RowSet const& spoken_of) {
  if (!expectation.events.empty()) return judge_moment(expectation, results);
  JudgedExpectation judged;
  auto const& explored = results.explored;
  judged.verdict = Truthfulness::holds;
  judged.measured = 0;
  std::vector<std::uint32_t> slow;
  auto const is_spoken_of = waters_of(results, spoken_of);
  for (std::uint32_t water = 0; water < results.trips.size(); ++water) {
    auto const ticks =
        longest_spoken_of(expectation, results.trips[water], explored.design.profiles.size());
    if (!is_spoken_of[water]) continue;
    judged.measured = explore::longer(judged.measured, ticks);
    if (!ticks || *ticks > expectation.ticks) slow.push_back(water);
  }
  auto failing = explored.combinations.rows_with(slow) & spoken_of;
  if (failing.is_empty()) return judged;
  name_violation(judged, results, std::move(failing));
  judged.example = explore::nearest_example(explored, judged.failing, slow);
  return judged;
}

}  // namespace leat::verdicts
