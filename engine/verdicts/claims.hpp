#pragma once
#include "engine/verdicts/expectations.hpp"

// The families of claims, each in a file of its own name. `spoken_of` are the reachable rows in
// which the expectation's condition holds; there is one.
namespace leat::verdicts {

// Names what breaks the claim: its rows, their condition, the nearest example.
void name_violation(JudgedExpectation&, Results const&, logic::RowSet failing);

// reaches, may_reach, ..., never_lost: over all combinations, or after the expectation's events.
JudgedExpectation judge_route_claim(model::Expectation const&, Results const&,
                                    logic::RowSet const& spoken_of);
// no_findings, finds.
JudgedExpectation judge_finding_claim(model::Expectation const&, Results const&,
                                      logic::RowSet const& spoken_of);
JudgedExpectation judge_clearing(model::Expectation const&, Results const&,
                                 logic::RowSet const& spoken_of);
JudgedExpectation judge_dealing(model::Expectation const&, Results const&);

}  // namespace leat::verdicts
