#pragma once
#include <string>

#include "engine/works/islands.hpp"
#include "engine/works/regions.hpp"
#include "lang/render/subject.hpp"

namespace leat::render {

// The islands that a drawing falls into, kind by kind: their size, the inputs and memory that each
// depends on, where they stand.
std::string islands_text(Subject const&, works::Islands const&);

// The regions of each kind of island, where it has several: the signals on which the moves of a
// body depend there, and where these cells lie; and how many of them are drawn unlike.
std::string regions_text(Subject const&, works::Islands const&);
// "3 0 1 to 12 2 1": between which cells feet can be, in the first copy.
std::string region_place(works::Part const&, works::Copy const&, works::Region const&);

// The places that a copy of a part stands in: "first", or "first+second" where it reaches over
// both; empty outside of a works.
std::string standing_words(Subject const&, works::Part const&, works::Copy const&);
// "3 0 1": where the drawing of a copy begins in the plant, lowest, northernmost, westernmost.
std::string least_place(works::Copy const&);

}  // namespace leat::render
