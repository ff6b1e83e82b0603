#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/model/finding_kind.hpp"
#include "engine/model/grid.hpp"
#include "lang/source/source_text.hpp"

// A fault in a design file, found while reading it. Data only; lang/render draws it.
namespace leat::diagnostics {

struct Label {
  source::Span span;
  std::string text;                   // stands alone: says what is at the span
  std::optional<model::Place> place;  // the cell it speaks of, where there is one
};

struct Diagnostic {
  std::string name;      // stable short name, a row of the catalogue
  std::string headline;  // stands alone, speaks of the junction
  Label primary;
  std::vector<Label> others;  // the "because", each with its own span
  std::string remedy;         // what to do next; may be empty
};

}  // namespace leat::diagnostics
