#pragma once
#include <string>

#include "engine/works/islands.hpp"
#include "lang/render/subject.hpp"

namespace leat::render {

// The islands that a drawing falls into, kind by kind: their size, the inputs and memory that each
// depends on, where they stand.
std::string islands_text(Subject const&, works::Islands const&);

// The places that a copy of a part stands in: "first", or "first+second" where it reaches over
// both; empty outside of a works.
std::string standing_words(Subject const&, works::Part const&, works::Copy const&);

}  // namespace leat::render
