#pragma once
#include <vector>

#include "engine/model/design.hpp"
#include "lang/diagnostics/sink.hpp"
#include "lang/lower/file_access.hpp"
#include "lang/source/source_map.hpp"
#include "lang/source/source_text.hpp"

namespace leat::lower {

// A junction ready for the engine, and the words that belong to its ids.
struct Junction {
  model::Design design;
  source::SourceMap map;
};

// From text to designs: parse, check, lower. What the first file of the text includes is read
// through `files` and added to the text; the designs are those of the first file alone. On any
// fault the sink holds it and the result is empty, so nothing is ever judged from a half-understood
// file.
std::vector<Junction> read_designs(source::SourceText&, FileAccess& files, diagnostics::Sink&);
// The same for a text that stands alone: it can include nothing.
std::vector<Junction> read_designs(source::SourceText const&, diagnostics::Sink&);

}  // namespace leat::lower
