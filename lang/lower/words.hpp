#pragma once
#include "lang/check/meaning.hpp"
#include "lang/lower/circuit_lowering.hpp"
#include "lang/source/source_map.hpp"

namespace leat::lower {

// The names that belong to a junction's engine ids. The span of each is its name where it is
// declared; what is built in has none. The rim's fill has neither a glyph nor a span.
void lower_words(check::Meaning const&, std::size_t junction, source::SourceMap&);

// The same for a works, but for its ports and fills, which come with what is placed. Signals that a
// place has to itself are named after it: "second.late".
void lower_works_words(check::Meaning const&, std::size_t works, CircuitLowering const&,
                       source::SourceMap&);

}  // namespace leat::lower
