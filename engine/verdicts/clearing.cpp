#include <algorithm>

#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

namespace {

// The longest time so far, and where it was found. No bound is longer than any.
class Longest {
 public:
  Longest(model::Expectation const& expectation, std::size_t profiles)
      : expectation_(expectation), profiles_(profiles) {}

  // Whether the bodies spoken of take longer than all before.
  bool takes(explore::Clearing const& clearing) {
    auto const before = ticks_;
    bool const is_first = !has_any_;
    for (std::size_t i = 0; i < clearing.size(); ++i) {
      if (expectation_.inlet && *expectation_.inlet != i / profiles_) continue;
      if (expectation_.profile && *expectation_.profile != i % profiles_) continue;
      ticks_ =
          ticks_ && clearing[i] ? std::optional(std::max(*ticks_, *clearing[i])) : std::nullopt;
      has_any_ = true;
    }
    return has_any_ && (is_first || ticks_ != before);
  }
  std::optional<int> ticks() const { return ticks_; }

 private:
  model::Expectation const& expectation_;
  std::size_t profiles_;
  std::optional<int> ticks_ = 0;
  bool has_any_ = false;
};

}  // namespace

// Over every water at rest in the rows spoken of, and every event from them.
JudgedExpectation judge_clearing(model::Expectation const& expectation, Results const& results,
                                 logic::RowSet const& spoken_of) {
  JudgedExpectation judged;
  auto const& explored = results.explored;
  if (!results.switchings.is_complete) return judged;
  Longest longest(expectation, explored.design.profiles.size());
  for (std::uint32_t node = 0; node < explored.histories.nodes.size(); ++node) {
    if (!spoken_of.contains(explored.row_of(node))) continue;
    auto const water = explored.histories.nodes[node].water;
    if (longest.takes(results.switchings.clearing_of_water[water]))
      judged.example = explore::example_of(explored, node);
  }
  for (auto const& switching : results.switchings.all) {
    auto const from = std::find_if(switching.occurrences.begin(), switching.occurrences.end(),
                                   [&](auto const& occurrence) {
                                     return spoken_of.contains(explored.row_of(occurrence.first));
                                   });
    if (from == switching.occurrences.end() || !longest.takes(switching.clearing)) continue;
    judged.example = explore::example_of(explored, from->first);
    judged.event = explored.machine.variables()[from->second];
  }
  judged.measured = longest.ticks();
  bool const is_kept = judged.measured && *judged.measured <= expectation.ticks;
  judged.verdict = is_kept ? Truthfulness::holds : Truthfulness::violated;
  if (is_kept) {
    judged.example.reset();
    judged.event.reset();
  } else {
    judged.failing = logic::RowSet(spoken_of.inputs());
    judged.failing.insert(judged.example->row);
  }
  return judged;
}

}  // namespace leat::verdicts
