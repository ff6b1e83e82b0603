#pragma once
#include <functional>
#include <optional>
#include <vector>

#include "engine/explore/combinations.hpp"
#include "engine/findings/finding.hpp"
#include "engine/tables/routes.hpp"
#include "engine/verdicts/expectations.hpp"
#include "engine/water/field.hpp"

// The verb the program calls: a design in, everything known about it out.
namespace leat {

// How much may be enumerated. Past it nothing is claimed: the judgement is undecided and says which
// inputs were too many.
struct Budget {
  int most_inputs = 16;
};

struct Judgement {
  bool is_decided = false;
  std::vector<model::SignalId>
      inputs;  // the inputs whose combinations were run, or were too many to run
  explore::Combinations combinations;  // empty when undecided, as are the next two
  tables::RouteTable routes;
  std::vector<findings::Finding> findings;                // worst first, then by place
  std::vector<verdicts::JudgedExpectation> expectations;  // one an expectation of the design
};

// Told after each solved setting, so that a caller can show progress.
using Progress = std::function<void(std::size_t done, std::size_t total)>;

// Every combination of the inputs is run: all of them while they fit the budget, else those that
// some cell or expectation depends on. The same design gives the same judgement.
Judgement judge(model::Design const&, Budget const& = {}, Progress const& = {});

// One combination, solved to be looked at: the arrangement and its settled water.
struct Solved {
  model::Arrangement arrangement;
  water::Field field;
  int steps = 0;  // water steps from dry until settled, each of Rule::step_ticks
};
// `input_values`: one value a signal; only those of inputs are read.
Solved solve(model::Design const&, std::vector<bool> const& input_values);

}  // namespace leat
