#pragma once
#include <string>

#include "lang/render/subject.hpp"

namespace leat::render {

// What cells of a fill are made of: "rock", "rock when divert else open".
std::string fill_words(Subject const&, model::FillId);

// What a mark stands for: "inlet millhouse, open".
std::string mark_words(Subject const&, model::FillId);

}  // namespace leat::render
