#pragma once
#include <cstddef>

#include "lang/diagnostics/sink.hpp"
#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::grammar {

// One file's text to a tree. Faults go to the sink, several per run; a declaration with a fault is
// left out of the tree, so nothing later speaks about a half-read one. Never throws; time and
// memory grow with the text's size.
syntax::Document parse(source::SourceText const&, diagnostics::Sink&, std::size_t file = 0);

}  // namespace leat::grammar
