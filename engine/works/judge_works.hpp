#pragma once
#include <memory>
#include <optional>
#include <vector>

#include "engine/judge.hpp"
#include "engine/works/passages.hpp"

// The verb for a plant: everything known of it, without enumerating the combinations of its
// signals.
namespace leat::works {

struct PlantBudget {
  Budget part;                                    // for each part
  std::size_t most_nodes = std::size_t{1} << 22;  // of the diagram, about 30 bytes each
};

// Something wrong with the plant as a whole: a finding without rows, and when it shows.
struct PlantFinding {
  findings::Finding finding;
  Function condition = logic::Diagram::always;
};

// One combination, as near to the plant as built as there is one: a value for each variable, by
// level.
using Instance = std::vector<bool>;

// What became of one expectation of the plant.
struct JudgedClaim {
  verdicts::Truthfulness verdict = verdicts::Truthfulness::undecided;
  Function failing = logic::Diagram::never;  // violated: when
  std::optional<Instance> instance;          // violated: the nearest such combination
  std::optional<std::size_t> passage;        // whose body it is then
  // no_findings: those that should not be there, of parts (part, finding) and of the plant.
  std::vector<std::pair<std::uint32_t, std::size_t>> part_findings;
  std::vector<std::size_t> plant_findings;
};

struct WorksJudgement {
  Islands islands;
  // By part, told in the plant's ids as its first copy has them: findings and variables. Whatever
  // speaks of single waters keeps the part's own numbers.
  std::vector<Judgement> parts;
  std::vector<std::vector<model::SignalId>> own_variables;  // of each part, in its own ids
  std::vector<std::uint32_t> too_large;  // parts that depend on more than can be run: undecided
  std::unique_ptr<Conditions> conditions;
  Passages passages;
  // The diagram grew past its budget by what had to be found: nothing is known of passages.
  bool has_run_out = false;
  std::vector<PlantFinding> findings;
  std::vector<JudgedClaim> expectations;
};

// Every part once, composed along the joins. The same plant gives the same judgement. Progress is
// told while a part is judged, in parts. Contract: each outlet is joined at most once.
WorksJudgement judge_works(model::Design const& plant, PlantBudget const& = {},
                           Progress const& = {});

}  // namespace leat::works
