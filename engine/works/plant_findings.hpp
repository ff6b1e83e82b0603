#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// What is wrong with the plant as a whole, each a pure function of the passages: outlets that no
// body ever reaches, joins that lead round without a way out, inputs and memory that change no
// passage.
std::vector<PlantFinding> plant_findings(model::Design const& plant, Network const&,
                                         WorksJudgement const&);

}  // namespace leat::works
