#pragma once
#include <string>
#include <utility>

#include "lang/diagnostics/catalogue.hpp"
#include "lang/diagnostics/diagnostic.hpp"

// Diagnostics of the grammar: they speak of places in the text, never of cells.
namespace leat::grammar {

inline diagnostics::Diagnostic fault(diagnostics::Listed name, std::string headline,
                                     source::Span span, std::string label, std::string remedy) {
  diagnostics::Diagnostic made;
  made.name = name;
  made.headline = std::move(headline);
  made.primary.span = span;
  made.primary.text = std::move(label);
  made.remedy = std::move(remedy);
  return made;
}

inline diagnostics::Diagnostic with_other(diagnostics::Diagnostic made, source::Span span,
                                          std::string label) {
  diagnostics::Label other;
  other.span = span;
  other.text = std::move(label);
  made.others.push_back(std::move(other));
  return made;
}

// Of a block that says more than once what is outside it.
inline diagnostics::Diagnostic outside_twice(std::string const& whose, source::Span first,
                                             source::Span second) {
  return with_other(fault("outside-twice", whose + " says twice what is outside it", second,
                          "said again here", "Keep one of the two lines."),
                    first, "said first here");
}

}  // namespace leat::grammar
