#pragma once
#include <vector>

#include "engine/logic/cone.hpp"

namespace leat::logic {

// Wires of a cone that can be taken for levers, as signals of the whole, none of them inside
// another: each follows from two levers or more and from nothing else, it can be on and off, and
// whatever uses its levers uses them through it alone. So some flip of a lever makes it change
// whatever the other signals do, and no flip changes two of them: what the cone's roots do over all
// histories is what they do when such wires are flipped by themselves.
//
// Idea: Y. Dutuit and A. Rauzy, "A linear-time algorithm to find modules of fault trees" (1996):
// nodes are dated when they are first and last met on a walk from the roots; a node stands for all
// below it if these were met while it was open, and never before or after. Promises and what
// memory follows from are roots too. That a wire is not constant is plain where it reads each lever
// once, else shown by a diagram. Cost: linear in the cone, but for the diagrams; a wire whose
// diagram gets too large is left as it is.
std::vector<Lever> modules(Cone const&);

}  // namespace leat::logic
