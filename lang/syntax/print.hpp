#pragma once
#include <string>

#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"

namespace leat::syntax {

// The document as text in one style, comments kept; `source` is the text it was read from. Reading
// the result gives the same document but for the spans, and printing that gives the same text. For
// documents that were read without a fault.
std::string print(Document const&, source::SourceText const& source);

// Pieces of it, as they stand in a line.
std::string print(Expression const&);
std::string print(NumberExpression const&);
// Where no operations may stand bare, as in `level 0..(rise + 1)` and `at 0 (8 * lane) -1`.
std::string print_bare(NumberExpression const&);
std::string print(Word const&);  // with what stands in its brackets
std::string print(Text const&);
std::string print(Duration const&);
std::string print(Clause const&);

}  // namespace leat::syntax
