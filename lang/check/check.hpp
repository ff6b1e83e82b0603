#pragma once
#include "lang/diagnostics/sink.hpp"
#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::check {

// The meaning of a parsed file: names, marks, shapes, signals, ports, expectations. Reports every
// user fault; when it reports none, lowering cannot fail.
void check(syntax::Document const&, source::SourceText const&, diagnostics::Sink&);

}  // namespace leat::check
