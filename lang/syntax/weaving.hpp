#pragma once
#include <string>
#include <vector>

#include "lang/source/source_text.hpp"
#include "lang/syntax/document.hpp"
#include "lang/syntax/line.hpp"

namespace leat::syntax {

// A line of the design with the comment behind it, or a comment that has a line for itself.
struct WovenLine {
  Line const* line = nullptr;  // none for a comment alone
  std::string comment;         // with its `#`; none: empty
  std::size_t indent = 0;
  bool has_blank_above = false;
};

// Puts the comments and the empty lines of the text back among the lines of its design. A comment
// goes above the line that it stood before, or behind the line on whose last line it stood. Inside
// of what becomes one line, a single comment goes behind it and several go above. One empty line
// stays of those the text has between two lines; none stay where a block begins and ends; and
// a paragraph always has one above it. Invariant: comments come out in their order, each once.
// Cost: one pass over lines and comments.
std::vector<WovenLine> woven(std::vector<Line> const&, std::vector<Comment> const&,
                             source::SourceText const&);

}  // namespace leat::syntax
