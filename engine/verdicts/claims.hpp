#pragma once
#include <functional>

#include "engine/verdicts/expectations.hpp"

// The families of claims, each in a file of its own name. `spoken_of` are the reachable rows in
// which the expectation's condition holds, never none.
namespace leat::verdicts {

// Names what breaks the claim: its rows, their condition, the nearest example.
void name_violation(JudgedExpectation&, Results const&, logic::RowSet failing);

// One traveller under one settled water.
struct Travel {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  body::Surroundings const& here;
  body::RouteGraph const& graph;
};

// Whether the expectation speaks of it.
bool speaks_of(model::Expectation const&, model::InletId, model::ProfileId);

// Does the expectation's events and shows every traveller it speaks of in the water after them.
// `moment` becomes that moment as an example; false where logic or water do not come to rest.
bool travel_after_events(model::Expectation const&, Results const&,
                         std::optional<explore::Example>& moment,
                         std::function<void(Travel const&)> const& visit);

// Names the moment after the events as the violation.
void name_moment(JudgedExpectation&, Results const&, std::optional<explore::Example> moment);

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
