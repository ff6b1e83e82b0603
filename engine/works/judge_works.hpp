#pragma once
#include <memory>
#include <optional>
#include <vector>

#include "engine/judge.hpp"
#include "engine/works/arrivals.hpp"

// The verb for a plant: everything known of it, without enumerating the combinations of its
// signals.
namespace leat::works {

// `region`: for each region of a part that is too large to be judged as a whole; histories are for
// all its regions together, and nothing is claimed of a region past them.
struct PlantBudget {
  Budget part;  // for each part that is judged as a whole
  Budget region = of_regions();

  static Budget of_regions() {
    Budget budget;
    budget.allows_fresh = false;
    budget.switching.most_switchings = 0;
    return budget;
  }
  std::size_t most_nodes = std::size_t{1} << 22;  // of the diagram, about 30 bytes each
};

// Something wrong with the plant as a whole: a finding without rows, and when it shows.
struct PlantFinding {
  findings::Finding finding;
  Function condition = logic::Diagram::always;
  bool is_proved = true;       // false: perhaps no body comes to it, by routes that are told wider
  bool can_be_parted = false;  // some of its combinations can be accepted by themselves
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
  // no_findings: those that should not be there, of pieces and of the plant.
  std::vector<findings::Finding const*> part_findings;
  std::vector<std::size_t> plant_findings;
};

struct WorksJudgement {
  Islands islands;
  // By part, told in the plant's ids as its first copy has them: findings and variables. Whatever
  // speaks of single waters keeps the part's own numbers; their fields are not kept.
  std::vector<Judgement> parts;
  std::vector<std::vector<model::SignalId>> own_variables;  // of each part, in its own ids
  // Of each part that depends on more than can be run at once: what was found region by region.
  // Findings, variables and examples are the plant's, as for parts. Findings of a region are those
  // of its water; what bodies meet is found over all regions (region_findings.hpp).
  std::vector<std::optional<RegionWalk>> by_regions;
  std::vector<std::uint32_t> too_large;  // parts of which nothing is known: undecided
  // Regions that bodies come into and that are not solved: undecided. By part, then region.
  std::vector<std::pair<std::uint32_t, std::uint32_t>> too_large_regions;
  // Routes may be told wider than they are, since waters are taken together that do not come
  // together (see mixed_waters.hpp). What fails then is not proved to fail.
  bool may_be_wider = false;
  // Some trap may not be told either: a body can come round to waters that it was in before.
  bool may_miss_traps = false;
  std::unique_ptr<Conditions> conditions;
  Passages passages;
  mutable Arrivals arrivals;  // found when they are first asked for
  // The diagram grew past its budget by what had to be found: nothing is known of passages.
  bool has_run_out = false;
  std::vector<PlantFinding> findings;
  std::vector<model::FindingKind> kinds_left_out;  // not looked for in the plant as a whole
  // Found in islands, but perhaps promised away: left out (see barred_histories.hpp).
  std::vector<model::FindingKind> kinds_in_doubt;
  std::vector<JudgedClaim> expectations;
};

// What was judged by itself: a part as a whole, or a region of one.
struct Piece {
  Judgement const* judged;
  std::uint32_t part = 0;
  std::optional<std::uint32_t> region{};
};
// Parts in their order, each followed by its regions.
std::vector<Piece> pieces_of(WorksJudgement const&);

// What nobody may speak of all combinations with: something was not run.
inline bool is_incomplete(WorksJudgement const& judged) {
  return !judged.too_large.empty() || !judged.too_large_regions.empty() || judged.has_run_out;
}
// Findings are looked for in every combination: no part was judged region by region.
bool are_findings_complete(WorksJudgement const&);

// Every part once, composed along the joins. The same plant gives the same judgement. Progress is
// told while a part is judged, in parts. Contract: each outlet is joined at most once.
WorksJudgement judge_works(model::Design const& plant, PlantBudget const& = {},
                           Progress const& = {});

}  // namespace leat::works
