#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// Leaves out what islands do only after histories that a promise may bar.
//
// An island is judged by all histories of its own signals, under the promises that speak of these
// alone. A promise that speaks of others too can bar some of them: what an island remembers of such
// a history never comes about, however many combinations it shows in. So where an island remembers,
// and it is not proved that each of its signals can be flipped alone wherever it stands, perhaps
// after flips of others that change nothing for it, its findings are in doubt: all but outlets that
// are never reached, which hold for fewer histories too. Their kinds are noted.
//
// Cost: for each copy of such an island some operations of the diagram for each variable, again
// until nothing is new. Limit: beside memory nothing is proved, and all is in doubt.
void leave_out_barred_histories(model::Design const& plant, WorksJudgement&);

}  // namespace leat::works
