#pragma once
#include <string>

#include "lang/diagnostics/diagnostic.hpp"
#include "lang/render/look.hpp"
#include "lang/source/source_text.hpp"

namespace leat::render {

// A fault of a design file as a paragraph: headline and short name, then for each place
// `file:line:column`, the source line with a ruler of carets under the span, and what is there;
// at the end what to do.
std::string diagnostic_text(diagnostics::Diagnostic const&, source::SourceText const&, Look);

// `file:line:column: severity: short-name: headline; label`
std::string diagnostic_line(diagnostics::Diagnostic const&, source::SourceText const&);

// `file:line:column` of an offset.
std::string location(source::SourceText const&, std::size_t offset);

// The source line of a span and the carets under it, each line with `indent` blanks before. Tabs
// stand as blanks up to the next column that is a multiple of 8. A line wider than `most` columns
// is cut to a stretch around the span, under a ruler that says its column numbers.
std::string source_excerpt(source::SourceText const&, source::Span, std::size_t indent, Look,
                           std::size_t most = 88);

}  // namespace leat::render
