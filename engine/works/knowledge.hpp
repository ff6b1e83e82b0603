#pragma once
#include "engine/works/judge_works.hpp"

// How far a judgement of a plant goes: what it was looked at for, and what was left out.
namespace leat::works {

// The waters of every part were followed through all switching.
bool is_history_known(WorksJudgement const&);
bool is_switching_known(WorksJudgement const&);
// Every water came to rest.
bool do_waters_rest(WorksJudgement const&);
// Findings of a kind that is not there are not there: they were looked for wherever they could be.
// Of a junction, or of a plant.
bool was_looked_for(model::FindingKind, Judgement const&);
bool was_looked_for(model::FindingKind, WorksJudgement const&);
// The kinds that were not looked for in all combinations, each once, ascending.
std::vector<model::FindingKind> kinds_left_out(WorksJudgement const&);

}  // namespace leat::works
