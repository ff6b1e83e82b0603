#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "engine/explore/guarding.hpp"
#include "engine/findings/finding.hpp"
#include "engine/tables/routes.hpp"
#include "engine/verdicts/expectations.hpp"

// The verb the program calls: a design in, everything known about it out.
namespace leat {

// How much may be enumerated. Past the variables nothing is claimed: the judgement is undecided and
// says which were too many; so it is past the rounds that a machine settles within. Past the
// histories each combination is judged with its fresh water; past the switchings nothing is said of
// bodies inside while cells change. Both are told.
struct Budget {
  int most_variables = 16;  // inputs and memory
  bool follows_history = true;
  bool allows_fresh = true;  // false: past the histories the judgement is undecided, too
  explore::HistoryBudget history;
  explore::SwitchingBudget switching;
};

struct Judgement {
  bool is_decided = false;
  // The inputs and memory whose combinations were run, or were too many to run.
  std::vector<model::SignalId> variables;
  // Where it is undecided since it is not known whether the logic comes to rest.
  std::optional<explore::Unended> unended;
  std::vector<findings::Finding> findings;                // worst first, then by place
  std::vector<verdicts::JudgedExpectation> expectations;  // one an expectation of the design
  bool has_restless = false;  // some event never comes to rest: nothing is known of what follows it
  // Empty when undecided:
  explore::Combinations combinations;
  explore::Histories histories;
  explore::Switchings switchings;
  std::vector<explore::Guard> guards;  // what every change of an input does to bodies inside
  tables::RouteTable routes;           // by situation
  // By water: how long bodies take from entering to leaving.
  std::vector<explore::Clearing> trips;
};

// Whether it is undecided since more inputs and memory matter than can be run.
inline bool has_too_many_variables(Judgement const& judged, Budget const& budget = {}) {
  return !judged.is_decided &&
         judged.variables.size() > static_cast<std::size_t>(budget.most_variables);
}

// Told after each change of the water that was found, when the total is not known yet (0), then
// after each water that was followed, and after each of the switchings, so that a caller can show
// progress. What it throws ends the judging and comes through: so a caller stops it.
using Progress = std::function<void(std::size_t done, std::size_t total)>;

// Every combination of inputs and memory that can be reached: of all of them while they fit the
// budget, else of those that some cell or expectation depends on. The same design gives the same
// judgement.
Judgement judge(model::Design const&, Budget const& = {}, Progress const& = {});

// One combination, solved to be looked at: the arrangement and its settled water.
struct Solved {
  model::Arrangement arrangement;
  water::Field field;
  int steps = 0;  // water steps until settled, each of Rule::step_ticks: from dry, or from the last
                  // event on
  std::vector<bool> signals{};  // every signal's value
  bool is_settled = true;     // false: the water still moved when its bound was reached
};
// From dry. `values`: one value a signal; those of inputs and memory are read.
Solved solve(model::Design const&, std::vector<bool> const& values);
// After flips of inputs, one after the other from as built, each once all has settled. None where
// the logic does not get quiet, or not within the rounds of a machine. Contract: the signals that
// count fit a machine (fits_machine).
std::optional<Solved> solve_after(model::Design const&, std::vector<model::SignalId> const& flips);

// Whether the inputs and memory that matter are few enough for the states to be followed one by
// one; without it there is no machine to be run.
bool fits_machine(model::Design const&);

// The logic to be run for a design: its circuit, with signals held as built that only other
// junctions depend on; where there is more than a table can hold, all that nothing here depends on.
model::Circuit circuit_to_run(model::Design const&, int most_variables = Budget{}.most_variables);

}  // namespace leat
