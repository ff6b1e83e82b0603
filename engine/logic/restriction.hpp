#pragma once
#include <vector>

#include "engine/logic/diagram.hpp"

// Functions of a diagram with fewer variables. Each question visits every node once (exists: every
// pair of nodes it has to join) and keeps its memory to itself. Where the diagram runs out, results
// mean nothing. Depth of recursion: one call a level.
namespace leat::logic {

// The levels that the function tests: those on which it depends, ascending.
std::vector<Diagram::Level> support(Diagram const&, Diagram::Function);
// The same for several at once.
std::vector<Diagram::Level> support(Diagram const&, std::vector<Diagram::Function>);

// What is left of it where the variable of that level is on, or off.
Diagram::Function cofactor(Diagram&, Diagram::Function, Diagram::Level, bool is_on);

// True where some setting of the variables of these levels makes it true. Levels ascending.
Diagram::Function exists(Diagram&, Diagram::Function, std::vector<Diagram::Level> const& levels);

// A function that says the same wherever `care` holds and is free elsewhere, and depends on no
// variable that neither of the two depends on; most often smaller.
//
// Idea: O. Coudert, J. C. Madre, "A unified framework for the formal verification of sequential
// circuits" (1990), the operator restrict: where one side of a test lies wholly outside the care
// set, the other side stands for both; a variable that the care set alone tests is smoothed away
// there. Limit: a heuristic; the result is the function itself where it would be larger.
// Contract: care is not never.
Diagram::Function simplified(Diagram&, Diagram::Function, Diagram::Function care);

}  // namespace leat::logic
