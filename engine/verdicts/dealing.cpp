#include "engine/explore/train.hpp"
#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

// One run with the times of body::ticks_of. A body that had a choice of moves took one of them, so
// what such a run shows is not proved for every other.
JudgedExpectation judge_dealing(model::Expectation const& expectation, Results const& results) {
  auto const& explored = results.explored;
  JudgedExpectation judged;
  explore::TrainOrder order;
  order.inlet = expectation.inlet.value_or(0);
  order.profile = expectation.profile.value_or(0);
  order.count = static_cast<int>(expectation.dealt.size());
  order.interval = expectation.ticks;
  order.flips = explore::flips_of(explored.design.circuit, expectation.events);
  if (!explore::is_runnable(order)) return judged;
  auto const run = explore::run_train(explored.design, explored.machine, order);
  judged.never_rests = !run.is_quiet;
  if (!run.is_quiet) return judged;
  for (auto const& body : run.bodies) judged.dealt.push_back(body.outlet);
  judged.dealt.resize(expectation.dealt.size());
  bool const is_kept = judged.dealt == expectation.dealt;
  judged.verdict = !is_kept         ? Truthfulness::violated
                   : run.had_choice ? Truthfulness::holds_within_bounds
                                    : Truthfulness::holds;
  return judged;
}

}  // namespace leat::verdicts
