#pragma once
#include <optional>

#include "engine/explore/combinations.hpp"
#include "engine/explore/histories.hpp"
#include "engine/explore/states.hpp"
#include "engine/logic/truth.hpp"

namespace leat::explore {

// A design with everything that can become of its signals and its water: what findings and
// verdicts over all combinations read.
struct Explored {
  model::Design const& design;
  logic::Machine const& machine;
  States const& states;
  Histories const& histories;
  Combinations const& combinations;
  logic::Truth const& truth;  // over the combinations' variables

  int variable_count() const { return combinations.reachable.inputs(); }
  // The row a node of the histories stands in.
  Row row_of(std::uint32_t node) const {
    return combinations.row_of_state[histories.nodes[node].state];
  }
};

// The combinations that some event leads to and that never come to rest: nothing is known of them.
// The memory they would have is not known either, so every value of it is counted in.
RowSet restless_rows(Explored const&);

// One way to bring something about: what is flipped from as built, a shortest list, and what there
// is then.
struct Example {
  Row row = 0;
  std::vector<model::SignalId> flips;
  std::optional<std::uint32_t> water;  // of the histories, where it is one of theirs
  bool is_fresh = true;                // its water is that which comes from dry in the same setting
};

// The nearest node in one of these rows, with one of these waters where any are named (ascending).
// None where nothing is like that. Cost: one look at each node.
std::optional<Example> nearest_example(Explored const&, RowSet const& rows,
                                       std::vector<std::uint32_t> const& waters = {});

// A node of the histories as an example.
Example example_of(Explored const&, std::uint32_t node);

// Where events lead that are done one after the other from as built, each once logic and water have
// settled. Cost: one settling of the water for each change of the cells.
struct Walk {
  bool is_quiet = true;    // false: after the last flip that was done the logic oscillates, or it is
                           // not known whether it does
  bool is_settled = true;  // false: some water on the way did not settle
  std::vector<bool> signals;
  Setting setting;
  water::Field field;
  int steps = 0;  // water steps of the last change
};
// Contract: only inputs are flipped. One that the machine holds, since nothing depends on it,
// changes nothing. Stops where the logic does not get quiet.
Walk walk(model::Design const&, logic::Machine const&, std::vector<model::SignalId> const& flips);

// What doing these events one after the other flips: a lever or clock changes once, a button or
// plate is pressed and let go.
std::vector<model::SignalId> flips_of(model::Circuit const&,
                                      std::vector<model::SignalId> const& events);

// Where a walk ended, as an example.
Example example_of(model::Design const&, Combinations const&, Walk const&,
                   std::vector<model::SignalId> flips);

}  // namespace leat::explore
