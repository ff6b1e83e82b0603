#pragma once
#include "lang/diagnostics/sink.hpp"
#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::grammar {

// Text to tree. Faults go to the sink, several per run; a declaration with a fault is left out of
// the tree, so nothing later speaks about a half-read one. Never throws; time and memory grow with
// the text's size.
syntax::Document parse(source::SourceText const&, diagnostics::Sink&);

}  // namespace leat::grammar
