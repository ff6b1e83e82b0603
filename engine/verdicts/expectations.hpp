#pragma once
#include <optional>
#include <vector>

#include "engine/explore/switching.hpp"
#include "engine/findings/finding.hpp"
#include "engine/tables/routes.hpp"

namespace leat::verdicts {

// The five verdicts, never merged.
enum class Truthfulness : std::uint8_t { holds, holds_within_bounds, violated, empty, undecided };

// Everything that was found out, as far as it was.
struct Results {
  explore::Explored const& explored;
  tables::RouteTable const& by_water;
  tables::RouteTable const& by_situation;
  std::vector<explore::Clearing> const& trips;  // by water
  bool is_switching_known;                      // false: dangers of switching were not looked for
  std::vector<findings::Finding> const& findings;
};

// What became of one expectation, by its index in the design.
struct JudgedExpectation {
  Truthfulness verdict = Truthfulness::undecided;
  logic::RowSet failing{0};                 // violated: the rows that break it
  std::vector<logic::Cube> condition;       // the same, as widely as can be said
  std::optional<explore::Example> example;  // violated: the nearest way to it
  // What happens in the example, for claims about routes.
  std::optional<model::InletId> inlet;
  std::optional<model::ProfileId> profile;
  std::optional<tables::Route> route;
  bool never_rests = false;  // undecided: logic or water never come to rest where it speaks of
  std::vector<std::size_t> findings;  // no_findings: those that should not be there
  std::optional<int> measured;  // `clears`: the longest trip that was found; none without bound
  // `deals`: where the bodies ended, in the order of entering; none where at no outlet.
  std::vector<std::optional<model::OutletId>> dealt;
};

std::vector<JudgedExpectation> judge_expectations(Results const&);

}  // namespace leat::verdicts
