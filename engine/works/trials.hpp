#pragma once
#include <vector>

#include "engine/works/reached.hpp"

namespace leat::works {

// Variables that matter, by level: flipping one of these alone changes what can become of some body
// that enters, between two combinations that can come about. It says so only of what a few tried
// combinations show; of the others it says nothing.
//
// Idea: 64 combinations at once, a bit each (see Sweep): one that can come about, and the same with
// one variable flipped. Where a body ends is compared by the digits of the outlet's number: a set
// of outlets that is reached in one combination and not in the other shows a difference, whatever
// the set. Tried are combinations in which bodies come deep into the plant, to where variables not
// yet seen to matter are tested (see Reached), and some by chance. Cost: one operation on words for
// each way, digit and 63 variables, a round; the rounds are bounded.
std::vector<bool> variables_that_matter(Network const&, logic::Diagram const&, Reached&,
                                        std::size_t variables, Function reachable);

}  // namespace leat::works
