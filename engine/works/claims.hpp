#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// When something else than arriving can happen to it.
Function troubled(Passage const&, logic::Diagram&);
// When a passage has more than one end.
Function splitting(Passage const&, logic::Diagram&);

// What becomes of a body in one combination.
struct Fate {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<model::OutletId> outlets;  // ascending
  bool is_trapped = false, spills = false, is_unsure = false, is_barred = false;
};
Fate fate(Passage const&, logic::Diagram const&, Instance const&);

// Every expectation of the plant, from the passages and findings of the judgement.
std::vector<JudgedClaim> judge_claims(model::Design const& plant, WorksJudgement const&);

// The assignment in `where` that differs from `as_built` in the fewest variables, of several the
// one that leaves the higher levels alone; none where there is none. Both by level. Cost: one look
// at each node.
std::optional<Instance> nearest(logic::Diagram const&, Function where, Instance const& as_built);

}  // namespace leat::works
