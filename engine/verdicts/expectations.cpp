#include "engine/verdicts/expectations.hpp"

#include <algorithm>

#include "engine/logic/minimal_cover.hpp"
#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

using logic::RowSet;
using model::Claim;

void name_violation(JudgedExpectation& judged, Results const& results, RowSet failing) {
  judged.verdict = Truthfulness::violated;
  judged.failing = std::move(failing);
  judged.condition = logic::minimal_cover(judged.failing,
                                          judged.failing | ~results.explored.combinations.reachable)
                         .cubes;
  judged.example = explore::nearest_example(results.explored, judged.failing);
}

namespace {

bool is_about_findings(Claim claim) { return claim == Claim::no_findings || claim == Claim::finds; }

JudgedExpectation judged_claim(model::Expectation const& expectation, Results const& results,
                               RowSet const& spoken_of) {
  if (expectation.claim == Claim::deals) return judge_dealing(expectation, results);
  if (expectation.claim == Claim::clears) return judge_clearing(expectation, results, spoken_of);
  if (is_about_findings(expectation.claim))
    return judge_finding_claim(expectation, results, spoken_of);
  return judge_route_claim(expectation, results, spoken_of);
}

// Rows with a water that did not settle: nothing is known of them.
RowSet unknown_rows(explore::Explored const& explored) {
  std::vector<std::uint32_t> restless;
  for (std::uint32_t w = 0; w < explored.histories.waters.size(); ++w) {
    if (!explored.histories.waters[w].is_settled) restless.push_back(w);
  }
  return explored.combinations.rows_with(restless);
}

// Whether its condition may come true in a combination that never comes to rest.
bool speaks_of_the_restless(model::Expectation const& expectation, Results const& results) {
  auto rows = explore::restless_rows(results.explored);
  if (expectation.condition) rows &= results.explored.truth.of(*expectation.condition);
  return !rows.is_empty();
}

// What was found to hold is only said as far as it was looked for.
Truthfulness as_far_as_known(model::Expectation const& expectation, Results const& results,
                             RowSet const& spoken_of) {
  bool const is_of_one_moment = !expectation.events.empty() || expectation.claim == Claim::deals;
  if (is_of_one_moment) return Truthfulness::holds;
  if (!(unknown_rows(results.explored) & spoken_of).is_empty()) return Truthfulness::undecided;
  if (speaks_of_the_restless(expectation, results)) return Truthfulness::undecided;
  bool const hangs_on_history = expectation.claim != Claim::finds;
  if (hangs_on_history && !results.explored.histories.is_followed)
    return Truthfulness::holds_within_bounds;
  bool const wants_no_notes = expectation.claim == Claim::no_findings && !expectation.ceiling;
  if (wants_no_notes && !results.is_switching_known) return Truthfulness::holds_within_bounds;
  return Truthfulness::holds;
}

// Whether its events lead through a combination that is promised never to come about.
bool leads_through_promised(model::Expectation const& expectation, Results const& results) {
  auto const& machine = results.explored.machine;
  auto const& circuit = machine.circuit();
  auto state = machine.as_built();
  for (auto flip : explore::flips_of(circuit, expectation.events)) {
    auto const& variables = machine.variables();
    auto const at = std::find(variables.begin(), variables.end(), flip);
    if (at == variables.end() || !state.is_quiet) continue;
    state = machine.after(state.code, static_cast<std::size_t>(at - variables.begin()));
    auto const values = machine.values(state.code);
    bool const is_promised = std::any_of(
        circuit.nevers.begin(), circuit.nevers.end(),
        [&](model::ExpressionId never) { return logic::is_true(circuit, never, values); });
    if (state.is_quiet && is_promised) return true;
  }
  return false;
}

JudgedExpectation judge_one(model::Expectation const& expectation, Results const& results) {
  auto const& [design, machine, states, histories, combinations, truth] = results.explored;
  auto spoken_of = combinations.reachable;
  if (expectation.condition) spoken_of &= truth.of(*expectation.condition);
  JudgedExpectation judged;
  if (leads_through_promised(expectation, results)) {
    judged.verdict = Truthfulness::empty;
  } else if (spoken_of.is_empty()) {
    judged.never_rests = speaks_of_the_restless(expectation, results);
    judged.verdict = judged.never_rests ? Truthfulness::undecided : Truthfulness::empty;
  } else {
    judged = judged_claim(expectation, results, spoken_of);
  }
  if (judged.verdict == Truthfulness::holds) {
    judged.verdict = as_far_as_known(expectation, results, spoken_of);
    judged.never_rests = judged.verdict == Truthfulness::undecided;
  }
  if (judged.failing.inputs() != combinations.reachable.inputs())
    judged.failing = RowSet(combinations.reachable.inputs());
  return judged;
}

}  // namespace

std::vector<JudgedExpectation> judge_expectations(Results const& results) {
  std::vector<JudgedExpectation> judged;
  for (auto const& expectation : results.explored.design.expectations)
    judged.push_back(judge_one(expectation, results));
  return judged;
}

}  // namespace leat::verdicts
