#pragma once
#include <string>

#include "lang/render/picture/scene.hpp"

// One cut of a scene as a group of an SVG. Its cells begin at 0, 0, each a square of `cell_size`;
// what stands around them (rulers, names of ports) keeps within the margins.
namespace leat::render {

struct CutMargins {
  int left = 34, top = 44, right = 14, bottom = 26;
};
inline constexpr CutMargins margins;

// Extents with the margins.
struct Extent {
  int width = 0, height = 0;
};
Extent extent_of(PictureScene const&, Cut);

// The signs (symbol_definitions) and the style (style_sheet) stand elsewhere in the document.
//
// Each cell but those that are ever solid is a group of its own, so that a script finds it and can
// switch it without drawing anything: <g id="c3-4-0" class="cell" data-cell="3 4 0"> (column, row,
// level) holds a <title> with the words of the place, and a <use> each of the classes `ground`
// (dry or w-...), `stuff` (m-...), `current` (f-... or e-...) and `switch` (k-on, k-off), those
// without a sign left out. In a section the id begins with `r` or `s` in place of `c`. Stretches of
// solid cells are one rectangle. Ways are groups of the class `way` with data-inlet, pins of the
// class `pin` with data-finding, the number.
std::string level_svg(PictureScene const&, Cut);

// "level 0, row 4, column 3: open, a flow of strength 5, current east": a place in words.
std::string cell_words(PictureScene const&, model::Cell);

}  // namespace leat::render
