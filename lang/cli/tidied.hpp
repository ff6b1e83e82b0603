#pragma once
#include <optional>
#include <string>

#include "lang/diagnostics/sink.hpp"
#include "lang/lower/file_access.hpp"
#include "lang/source/source_text.hpp"

namespace leat::cli {

// The first file of the text in one style. The result has been read again: its tree, its comments
// and the designs that come of it are those of the text, so nothing that Leat knows of it has
// changed. None where the text has a fault, which the sink then holds, or, should this program ever
// have one of its own, where the result would not read the same; then the sink is empty.
//
// A file that draws nothing has no design by itself: it is there to be included. Its tree is
// compared.
std::optional<std::string> tidied(source::SourceText&, lower::FileAccess&, diagnostics::Sink&);

}  // namespace leat::cli
