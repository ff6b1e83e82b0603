#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// What is wrong with the logic of the plant as a whole: memory that never changes back, states that
// are never reached, memory that is always equal. Kinds for which there is too much to look at are
// added to `left_out`. Cost: that of exploring up to RowSet::most_inputs inputs and memory
// elements.
std::vector<PlantFinding> logic_findings(model::Design const& plant, WorksJudgement const&,
                                         std::vector<model::FindingKind>& left_out);

}  // namespace leat::works
