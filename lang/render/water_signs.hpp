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

// What the signs in pictures of these views mean, only those that occur, one line each. Of marks that
// look alike and are switched by different signals, as in a works, the first few.
std::string legend(Scene const&, std::vector<View> const&, PictureStyle);

}  // namespace leat::render
