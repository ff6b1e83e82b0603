#pragma once
#include <vector>

#include "engine/works/network.hpp"

namespace leat::works {

// The ways through one copy of a part that was solved by regions, by its inlet * profiles +
// profile: one for each thing that can become of a body, with the condition.
//
// Idea: a position that a body can reach is an inlet, and each step to it a joined outlet; so the
// whole is a network like that of a plant, and is followed by the same rules (passages.hpp), which
// hold position by position what body/outcome.hpp says of one water. Where a region has several
// waters in one combination, further variables choose among them, the same one for all of a body's
// way; what holds for some choice can happen. Regions choose for themselves, so that where water
// remembers more may be said to happen than does, and never less. Cost: two operations of the
// diagram for each step, from each inlet.
std::vector<std::vector<Way>> region_passages(Copy const&, model::Design const& part,
                                              RegionWalk const&, Conditions&);

}  // namespace leat::works
