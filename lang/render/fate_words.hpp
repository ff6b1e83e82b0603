#pragma once
#include <string>

#include "engine/works/claims.hpp"
#include "lang/render/subject.hpp"

namespace leat::render {

// "reaches kiln or press (split), can be trapped".
std::string fate_words(Subject const&, works::Fate const&);

}  // namespace leat::render
