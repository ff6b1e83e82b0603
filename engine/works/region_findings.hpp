#pragma once
#include "engine/works/judge_works.hpp"

namespace leat::works {

// What bodies meet in parts that were solved by regions, as findings of the plant: each with all
// combinations in which it shows, for each copy.
//
// Idea: a stretch of a way through one region shows something exactly while bodies come to where it
// begins and the region has that water (region_sights.hpp); both are conditions of the spot
// network. Where it takes several regions to see something, it is seen in the network itself:
// closed loops, ways that part, inlets into which nobody fits, and whether ways hang on what water
// remembers (then a region's finding of it is a warning). Cost: the network of each copy once
// more, and two operations of the diagram for each coming.
void region_findings(model::Design const& plant, WorksJudgement&);

}  // namespace leat::works
