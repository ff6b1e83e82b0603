#pragma once
#include <string>

#include "lang/render/json.hpp"

namespace leat::render {

// How many combinations: exact while a long double holds them, which it does up to 2^64.
using Count = long double;

// "4096", "2^441", "3 x 2^440", "about 1.2e+70".
std::string count_text(Count);
// A number, whole where it is exact.
Json count_json(Count);

}  // namespace leat::render
