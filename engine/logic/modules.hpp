#pragma once
#include <vector>

#include "engine/logic/cone.hpp"

namespace leat::logic {

// Wires of a cone that can be taken for levers, as signals of the whole, none of them inside
// another: each follows from two levers or more and from nothing else, reads each of them in one
// sense only, and whatever uses its levers uses them through it alone.
//
// Why: such a wire is unate in its levers. Where it is on it stays on while levers go over to the
// side that favours it, so between any two combinations of its levers in which it is on some flips
// lead without its going off, and the other way round. So whatever is flipped of it and of the
// other signals, one after the other, some flips of levers do, up to any combination that gives it
// its last value; and no flip of a lever changes two such wires. What the cone's roots do over all
// histories is what they do when such wires are flipped by themselves.
//
// Idea: Y. Dutuit and A. Rauzy, "A linear-time algorithm to find modules of fault trees" (1996):
// nodes are dated when they are first and last met on a walk from the roots; a node stands for all
// below it if these were met while it was open, and never before or after. Promises and what
// memory follows from are roots too. Cost: linear in the cone; wires that would take more to be
// looked at, inside of many that are none, are left as they are.
std::vector<Lever> modules(Cone const&);

}  // namespace leat::logic
