#pragma once
#include <cstddef>
#include <string>
#include <vector>

#include "engine/model/grid.hpp"
#include "lang/check/reading.hpp"
#include "lang/check/shape.hpp"

namespace leat::check {

// How often a glyph is drawn in a junction, and where first in the text.
struct MarkUse {
  std::size_t count = 0;
  model::Place first;
  source::Span span;  // of the first
};

struct StrayGlyph {
  std::string glyph;
  MarkUse use;
};

// A junction as drawn: its shape and what its rows hold.
struct Drawing {
  syntax::JunctionDeclaration const* junction = nullptr;
  std::size_t file = 0;  // whose marks it is drawn with
  Shape shape;
  std::vector<MarkUse> marks;      // by the mark's place in Names::marks; only its file's are drawn
  std::vector<StrayGlyph> strays;  // glyphs that no mark declares, as first met
};

Drawing read_drawing(Reading const&, syntax::JunctionDeclaration const&);

// Calls `visit(z, y, row)` for every drawn row of a sound shape; a row drawn for a range of levels
// comes once for each.
template <class Visit>
void for_each_row(Shape const& shape, Visit&& visit) {
  for (int z = 0; z < shape.height(); ++z) {
    auto const& rows = shape.levels[static_cast<std::size_t>(z)]->rows;
    for (int y = 0; y < shape.depth; ++y) visit(z, y, rows[static_cast<std::size_t>(y)]);
  }
}

}  // namespace leat::check
