#include "engine/verdicts/expectations.hpp"

#include <algorithm>

#include "engine/logic/statement.hpp"

namespace leat::verdicts {

using body::Verdict;
using logic::RowSet;
using model::Claim;

namespace {

bool reaches(tables::Route const& route, std::optional<std::uint32_t> outlet) {
  return std::find(route.outlets.begin(), route.outlets.end(), *outlet) != route.outlets.end();
}

bool keeps(model::Expectation const& expectation, tables::Route const& route) {
  switch (expectation.claim) {
    case Claim::reaches:
      return route.verdict == Verdict::certain && reaches(route, expectation.outlet);
    case Claim::may_reach:
      return reaches(route, expectation.outlet);
    case Claim::never_reaches:
      return !reaches(route, expectation.outlet);
    case Claim::reaches_nothing:
      return route.outlets.empty();
    case Claim::never_trapped:
      return route.trapped.empty();
    case Claim::never_spilled:
      return !route.spills;
    case Claim::never_split:
      return route.verdict != Verdict::split;
    case Claim::never_doubtful:
      return route.verdict != Verdict::doubtful;
    case Claim::never_lost:
      return route.verdict != Verdict::lost;
    case Claim::no_findings:
    case Claim::finds:
    case Claim::clears:
    case Claim::deals:
      break;
  }
  return true;
}

struct Results {
  logic::Truth const& truth;
  explore::Combinations const& combinations;
  tables::RouteTable const& routes;
  std::vector<findings::Finding> const& findings;
};

void name_example(JudgedExpectation& judged, Results const& results) {
  judged.verdict = Truthfulness::violated;
  judged.condition = logic::irredundant_cover(judged.failing, judged.failing);
  judged.example = logic::nearest_row(judged.failing, results.truth.as_built());
}

// The rows of `spoken_of` in which the chosen route breaks the claim.
RowSet breaking(model::Expectation const& expectation, Results const& results, model::InletId inlet,
                model::ProfileId profile, RowSet const& spoken_of) {
  return spoken_of & results.combinations.rows_where([&](std::uint32_t setting) {
    return !keeps(expectation, results.routes.at(setting, inlet, profile));
  });
}

JudgedExpectation judge_route_claim(model::Expectation const& expectation, Results const& results,
                                    RowSet const& spoken_of) {
  JudgedExpectation judged;
  judged.failing = RowSet(results.truth.input_count());
  std::vector<std::pair<std::pair<model::InletId, model::ProfileId>, RowSet>> broken;
  for (model::InletId inlet = 0; inlet < results.routes.inlets(); ++inlet) {
    if (expectation.inlet && *expectation.inlet != inlet) continue;
    for (model::ProfileId profile = 0; profile < results.routes.profiles(); ++profile) {
      if (expectation.profile && *expectation.profile != profile) continue;
      auto rows = breaking(expectation, results, inlet, profile, spoken_of);
      judged.failing |= rows;
      broken.push_back({{inlet, profile}, std::move(rows)});
    }
  }
  judged.verdict = Truthfulness::holds;
  if (judged.failing.is_empty()) return judged;
  name_example(judged, results);
  for (auto const& [who, rows] : broken) {
    if (judged.inlet || !rows.contains(*judged.example)) continue;
    judged.inlet = who.first;
    judged.profile = who.second;
  }
  return judged;
}

bool is_objectionable(model::Expectation const& expectation, findings::Finding const& finding) {
  return !finding.accepted_by && (!expectation.ceiling || finding.severity > *expectation.ceiling);
}

JudgedExpectation judge_no_findings(model::Expectation const& expectation, Results const& results,
                                    RowSet const& spoken_of) {
  JudgedExpectation judged;
  judged.failing = RowSet(results.truth.input_count());
  for (auto const& finding : results.findings) {
    if (is_objectionable(expectation, finding)) judged.failing |= finding.rows & spoken_of;
  }
  judged.verdict = Truthfulness::holds;
  if (!judged.failing.is_empty()) name_example(judged, results);
  return judged;
}

JudgedExpectation judge_finds(model::Expectation const& expectation, Results const& results,
                              RowSet const& spoken_of) {
  JudgedExpectation judged;
  judged.failing = RowSet(results.truth.input_count());
  bool const is_found = std::any_of(
      results.findings.begin(), results.findings.end(), [&](findings::Finding const& finding) {
        return finding.kind == expectation.kind && !(finding.rows & spoken_of).is_empty() &&
               (!expectation.cell ||
                std::binary_search(finding.cells.begin(), finding.cells.end(), *expectation.cell));
      });
  judged.verdict = is_found ? Truthfulness::holds : Truthfulness::violated;
  return judged;
}

JudgedExpectation judge_one(model::Expectation const& expectation, Results const& results) {
  auto const inputs = results.truth.input_count();
  auto const spoken_of =
      expectation.condition ? results.truth.of(*expectation.condition) : RowSet(inputs, true);
  if (spoken_of.is_empty()) {
    JudgedExpectation judged;
    judged.verdict = Truthfulness::empty;
    judged.failing = RowSet(inputs);
    return judged;
  }
  if (expectation.claim == Claim::no_findings) {
    return judge_no_findings(expectation, results, spoken_of);
  }
  if (expectation.claim == Claim::finds) return judge_finds(expectation, results, spoken_of);
  return judge_route_claim(expectation, results, spoken_of);
}

}  // namespace

std::vector<JudgedExpectation> judge_expectations(model::Design const& design,
                                                  logic::Truth const& truth,
                                                  explore::Combinations const& combinations,
                                                  tables::RouteTable const& routes,
                                                  std::vector<findings::Finding> const& findings) {
  Results const results{truth, combinations, routes, findings};
  std::vector<JudgedExpectation> judged;
  for (auto const& expectation : design.expectations)
    judged.push_back(judge_one(expectation, results));
  return judged;
}

}  // namespace leat::verdicts
