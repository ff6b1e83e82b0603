#pragma once
#include "lang/check/names.hpp"
#include "lang/check/unknown_names.hpp"
#include "lang/diagnostics/sink.hpp"
#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::check {

// What every question is asked about. A file of which the grammar had to leave something out is not
// whole: then what is missing in the tree may be there in the text, so nothing is said about
// absence.
struct Reading {
  syntax::Document const& document;
  source::SourceText const& source;
  Names const& names;
  UnknownNames& unknown;
  diagnostics::Sink& sink;
  bool is_whole = true;
};

}  // namespace leat::check
