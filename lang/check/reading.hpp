#pragma once
#include "lang/check/names.hpp"
#include "lang/check/unknown_names.hpp"
#include "lang/diagnostics/sink.hpp"
#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::check {

// What every question is asked about: a file with all it includes, as one tree. Of a declaration,
// its span tells which file it stands in. A text of which the grammar or the unfolding had to leave
// something out is not whole: then what is missing in the tree may be there in the text, so nothing
// is said about absence.
struct Reading {
  syntax::Document const& document;
  source::SourceText const& source;
  Names const& names;
  UnknownNames& unknown;
  diagnostics::Sink& sink;
  bool is_whole = true;

  std::size_t file_of(syntax::Word const& word) const { return source.file_of(word.span.begin); }
};

}  // namespace leat::check
