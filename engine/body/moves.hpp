#pragma once
#include <vector>

#include "engine/body/position.hpp"
#include "engine/body/surroundings.hpp"

namespace leat::body {

// The moves of the model, to the letter of its appendix, one function a rule; each appends to
// `moves`. The position's feet cell is inside the drawing and no outlet. Targets may lie outside:
// the body has then left.
void fall(Surroundings const&, Position, std::vector<Move>& moves);   // 1: with drift and sink
void rise(Surroundings const&, Position, std::vector<Move>& moves);   // 3a
void push(Surroundings const&, Position, std::vector<Move>& moves);   // 3b: with climb
void drift(Surroundings const&, Position, std::vector<Move>& moves);  // 3c
void sink(Surroundings const&, Position, std::vector<Move>& moves);   // 5

// 4: what a body that has reached `position` still remembers.
Position forgetful(Surroundings const&, Position);

// All moves from a position, targets already forgetful.
std::vector<Move> moves_from(Surroundings const&, Position);

// Why a position without moves is the last one: dry, still or pinned.
End rest_at(Surroundings const&, Position);

}  // namespace leat::body
