#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Turns the parts' findings, guards, variables and examples into the plant's ids, as the first copy
// of each has them, and leaves out what a plant says as a whole: signals that change nothing or
// agree, states, and acceptances that nothing answers to.
void tell_in_plant(model::Design const& plant, WorksJudgement&);

}  // namespace leat::works
