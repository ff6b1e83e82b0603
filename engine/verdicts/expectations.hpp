#pragma once
#include <optional>
#include <vector>

#include "engine/findings/finding.hpp"
#include "engine/tables/routes.hpp"

namespace leat::verdicts {

// The five verdicts, never merged.
enum class Truthfulness : std::uint8_t { holds, holds_within_bounds, violated, empty, undecided };

// What became of one expectation, by its index in the design.
struct JudgedExpectation {
  Truthfulness verdict = Truthfulness::undecided;
  logic::RowSet failing{0};            // violated: the rows that break it
  std::vector<logic::Cube> condition;  // the same, as widely as can be said
  std::optional<logic::Row>
      example;  // the failing row with the fewest inputs changed from as built
  // what happened in the example, for route claims
  std::optional<model::InletId> inlet;
  std::optional<model::ProfileId> profile;
};

std::vector<JudgedExpectation> judge_expectations(model::Design const&, logic::Truth const&,
                                                  explore::Combinations const&,
                                                  tables::RouteTable const&,
                                                  std::vector<findings::Finding> const&);

}  // namespace leat::verdicts
