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

// "pushed east by the water", "falls", "may climb east".
std::string move_words(body::Position const& from, body::Step const&, body::Position const& to);

// How an ending is told: "reaches kiln", "stands on dry ground", "goes round for ever".
std::string ending_words(Subject const&, body::Ending const&);

}  // namespace leat::render
