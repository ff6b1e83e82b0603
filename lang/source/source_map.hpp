#pragma once
#include <cstdint>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "lang/source/placed_texts.hpp"

// What the engine does not know of a junction: names, glyphs and places in the text, by engine id.
// Made by lowering, read by rendering.
namespace leat::source {

struct ExpectationText {
  std::string title;   // of the `expect` block
  std::string clause;  // the clause in one line, as written (single blanks)
  Span span;
};

struct AcceptanceText {
  std::string reason;
  Span span;
};

// Of a junction or a works.
struct SourceMap {
  Named junction;
  std::string title;
  std::vector<Named> signals;                   // by SignalId
  std::vector<Named> materials;                 // by MaterialId
  std::vector<Named> inlets;                    // by InletId
  std::vector<Named> outlets;                   // by OutletId
  std::vector<Named> profiles;                  // by ProfileId
  std::vector<Named> fills;                     // by FillId: name = the mark's glyph (UTF-8)
  std::vector<ExpectationText> expectations;    // by index into Design::expectations
  std::vector<AcceptanceText> acceptances;      // by index into Design::acceptances
  std::map<std::pair<int, int>, RowText> rows;  // key (z, y); of a junction
  PlacedTexts placed;                           // of a works

  // Of a works: every name by which one of its ports can be called, and the id.
  std::map<std::string, std::uint32_t> inlet_names, outlet_names;

  bool is_works() const { return !placed.empty(); }
  // The span of the glyph drawn for a cell of the drawing; for a cell outside it, the junction's.
  Span span_of(model::Place) const;
};

}  // namespace leat::source
