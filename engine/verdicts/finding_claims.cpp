#include <algorithm>

#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

using logic::RowSet;

namespace {

bool is_objectionable(model::Expectation const& expectation, findings::Finding const& finding) {
  return !finding.accepted_by && (!expectation.ceiling || finding.severity > *expectation.ceiling);
}

JudgedExpectation judge_none(model::Expectation const& expectation, Results const& results,
                             RowSet const& spoken_of) {
  JudgedExpectation judged;
  judged.verdict = Truthfulness::holds;
  RowSet failing(spoken_of.inputs());
  for (std::size_t i = 0; i < results.findings.size(); ++i) {
    auto const& finding = results.findings[i];
    if (!is_objectionable(expectation, finding)) continue;
    // Of states that are never reached no combination can be named.
    bool const is_of_no_row = (finding.rows & results.explored.combinations.reachable).is_empty();
    auto const rows = finding.rows & spoken_of;
    if (is_of_no_row || !rows.is_empty()) judged.findings.push_back(i);
    failing |= rows;
  }
  if (!judged.findings.empty()) name_violation(judged, results, std::move(failing));
  return judged;
}

// What was left out for its cost may be there.
bool was_looked_for(model::FindingKind kind, Results const& results) {
  using model::FindingKind;
  if (model::is_of_switching(kind)) return results.is_switching_known;
  bool const is_of_history = kind == FindingKind::remembering_water ||
                             kind == FindingKind::formed_source ||
                             kind == FindingKind::restless_water;
  return !is_of_history || results.explored.histories.is_followed;
}

JudgedExpectation judge_finds(model::Expectation const& expectation, Results const& results,
                              RowSet const& spoken_of) {
  bool const is_found = std::any_of(
      results.findings.begin(), results.findings.end(), [&](findings::Finding const& finding) {
        bool const is_of_no_row =
            (finding.rows & results.explored.combinations.reachable).is_empty();
        return finding.kind == expectation.kind &&
               (is_of_no_row || !(finding.rows & spoken_of).is_empty()) &&
               (!expectation.cell ||
                std::binary_search(finding.cells.begin(), finding.cells.end(), *expectation.cell));
      });
  JudgedExpectation judged;
  judged.verdict = is_found                                     ? Truthfulness::holds
                   : was_looked_for(*expectation.kind, results) ? Truthfulness::violated
                                                                : Truthfulness::undecided;
  return judged;
}

}  // namespace

JudgedExpectation judge_finding_claim(model::Expectation const& expectation, Results const& results,
                                      RowSet const& spoken_of) {
  return expectation.claim == model::Claim::finds ? judge_finds(expectation, results, spoken_of)
                                                  : judge_none(expectation, results, spoken_of);
}

}  // namespace leat::verdicts
