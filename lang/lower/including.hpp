#pragma once
#include "lang/diagnostics/sink.hpp"
#include "lang/lower/file_access.hpp"
#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::lower {

// Files of one design, the first one among them.
inline constexpr std::size_t most_files = 1000;
// Times that something is included, whether or not it has been read already.
inline constexpr std::size_t most_includes = 20'000;

// The first file of the text and all that it includes, as one tree: each file's declarations stand
// where it is first included, without what that file expects, which is for its own run. Files that
// are read are added to the text; which file a declaration is from, its span tells. Comments are
// those of the first file. Reports what is wrong within each file, and includes that cannot be
// followed or lead back to a file that is being read.
syntax::Document read_with_included(source::SourceText&, FileAccess&, diagnostics::Sink&);

}  // namespace leat::lower
