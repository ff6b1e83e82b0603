#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Finds what is wrong with the plant as a whole, and notes for what it could not look: outlets that
// no body ever reaches, inputs that change no passage, the logic, acceptances that nothing answers
// to. An outlet that a part never reaches either is told once.
void find_in_plant(model::Design const& plant, WorksJudgement&);

}  // namespace leat::works
