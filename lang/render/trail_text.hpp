#pragma once
#include <string>
#include <vector>

#include "engine/body/endings.hpp"
#include "lang/render/documents.hpp"
#include "lang/render/level_picture.hpp"
#include "lang/render/look.hpp"

namespace leat::render {

// One body's ways from one inlet: the verdict, then for each ending the shortest trail, step by
// step with the rule that moved the body, and the levels it passes with the water and the trail.
struct Journey {
  TrailPart const& part;
  Scene const& scene;
  std::vector<body::Ending> endings;  // those to be shown
  std::size_t left_out = 0;           // endings that are not
};

std::string journey_text(Journey const&, Look);

// How bodies that enter there leave the works, joins and all islands on the way included; empty
// where no join leads on.
std::string arrivals_text(TrailPart const&, Look);

// "pushed east by the water", "falls", "climbs over the edge to the east (unsure)".
std::string move_words(model::Place from, body::Step const&, model::Place to);

// How an ending is told: "Reaches kiln", "Stays: floats in still water", "Goes round for ever".
std::string ending_words(Subject const&, body::Ending const&);

}  // namespace leat::render
