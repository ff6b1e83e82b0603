#pragma once
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

#include "engine/model/grid.hpp"
#include "lang/source/posture.hpp"
#include "lang/source/source_text.hpp"

// What the engine does not know of a junction: names, glyphs and places in the text, by engine id.
// Made by lowering, read by rendering.
namespace leat::source {

struct Named {
  std::string name;
  Span span;  // of its declaration; empty for what is built in
};

struct ExpectationText {
  std::string title;   // of the `expect` block
  std::string clause;  // the clause in one line, as written (single blanks)
  Span span;
};

struct AcceptanceText {
  std::string reason;
  Span span;
};

// The text of one drawn row: its first glyph's offset, and the offset of each glyph from there on.
struct RowText {
  std::vector<std::size_t> glyph_begins;  // width + 1 entries, the last one past the row
};

// Something placed in a works, and the text of what is drawn for it.
struct PlacedText {
  Named name;    // "north.first"
  Named design;  // the junction
  Standing standing;
  std::shared_ptr<std::map<std::pair<int, int>, RowText> const> rows;
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
  std::vector<PlacedText> placed;               // of a works

  bool is_works() const { return !placed.empty(); }
  // The places that stand in a box of cells, both corners included, by index.
  std::vector<std::size_t> placed_in(model::Place least, model::Place most) const;

  // The span of the glyph drawn for a cell of the drawing; for a cell outside it, the junction's.
  Span span_of(model::Place) const;
};

}  // namespace leat::source
