#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// What is wrong with the plant as a whole: outlets that no body ever reaches, inputs that change no
// passage, acceptances that nothing answers to.
std::vector<PlantFinding> plant_findings(model::Design const& plant, WorksJudgement const&);

}  // namespace leat::works
