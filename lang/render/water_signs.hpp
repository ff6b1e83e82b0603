#pragma once
#include <string>
#include <vector>

#include "engine/water/survey.hpp"
#include "lang/render/level_picture.hpp"

namespace leat::render {

// The signs of one wet cell: what its water is, and its current.
std::string water_sign(water::WetCell const&, Look);
// "a flow of strength 6, current east".
std::string water_words(water::WetCell const&);

// "open", "rock when divert else open".
std::string fill_meaning(Subject const&, model::FillId);
// What a mark stands for: "inlet millhouse, open", "rock when divert else open".
std::string mark_words(Subject const&, model::FillId);

// What the signs in a picture of these levels mean, only those that occur, one line each.
std::string legend(Scene const&, std::vector<int> const& levels, PictureStyle);

}  // namespace leat::render
