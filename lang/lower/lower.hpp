#pragma once
#include <vector>

#include "engine/model/design.hpp"
#include "lang/diagnostics/sink.hpp"
#include "lang/source/source_map.hpp"
#include "lang/source/source_text.hpp"

namespace leat::lower {

// A junction ready for the engine, and the words that belong to its ids.
struct Junction {
  model::Design design;
  source::SourceMap map;
};

// From text to designs: parse, check, lower. On any fault the sink holds it and the result is
// empty, so nothing is ever judged from a half-understood file.
std::vector<Junction> read_designs(source::SourceText const&, diagnostics::Sink&);

}  // namespace leat::lower
