#pragma once
#include <string>
#include <vector>

#include "engine/judge.hpp"

// Small junctions drawn in code, so that the engine is tested without the language.
//
//  X rock   . open   w placed water   s sign   p plate   g grate (passes water, carries bodies)
//  i, j     inlets 0 and 1, open      A, B, C  outlets 0, 1, 2, open
//  a        rock when lever 0 is on, else open     b  the other way round
//  c, d     the same for lever 1                   v  water when lever 0 is on, else open
namespace leat::drawn {

using Level = std::vector<std::string>;  // one text a row, northernmost first

// Levels from the lowest up; all of one size. Levers 0 and 1 exist and start off; the one profile
// is the model's default.
model::Design draw(std::vector<Level> const& levels);

// The settled fresh water with the given levers on.
Solved settled(model::Design const&, std::vector<bool> levers = {false, false});
// What is solved points into its design, which therefore must live on.
Solved settled(model::Design&&, std::vector<bool> levers = {false, false}) = delete;

// One row of a field as text: the strength of flows, S source, F falling, . dry, X where water may
// not enter.
std::string water_row(Solved const&, int y, int z);
std::vector<Level> water_levels(Solved const&);
// The settled fresh water of a drawing, level by level.
std::vector<Level> water_of(std::vector<Level> const& drawing,
                            std::vector<bool> levers = {false, false});

// The one route of a design with the given levers on.
tables::Route const& route(Judgement const&, bool lever_0 = false, bool lever_1 = false,
                           model::InletId inlet = 0, model::ProfileId profile = 0);

// Whether the judgement has a finding of the kind.
bool has(Judgement const&, model::FindingKind);
findings::Finding const& only(Judgement const&, model::FindingKind);
// The cells of a finding as "x y z".
std::vector<std::string> places(model::Design const&, findings::Finding const&);

// What a cell is made of while a signal's expression is on, and else.
void put(model::Design&, model::Place, model::Fill);
// Adds a signal of its own kind to a drawn design; the expression that is on while it is.
model::ExpressionId add(model::Design&, model::Signal);

// Adds a latch that sets and resets itself for ever while the expression is on.
model::SignalId add_restless(model::Design&, model::ExpressionId);

// The one expectation of a design, judged.
verdicts::JudgedExpectation judged(model::Design, model::Expectation, Budget const& = {});
verdicts::Truthfulness verdict(model::Design, model::Expectation, Budget const& = {});

// Water with a memory: in a dry channel a body comes down onto the source at {3, 0, 1}. As built
// water leaves it both ways, and the body stays; while lever 0 is on, a second source stands east
// of a gap, and one forms between them, which stays when the lever is off again: the body then goes
// west to A.
model::Design remembering();

// A channel that ends with a sign at the edge of a shaft: a body comes down into it dry, carried
// east. The shaft is `width` cells wide; its lowest `water` of `depth` levels are placed water.
// The edge is at {2, 0, depth + 1}, the bottom of the shaft at {2, 0, 1}.
model::Design shaft(int depth, int width, int water = 0);

}  // namespace leat::drawn
