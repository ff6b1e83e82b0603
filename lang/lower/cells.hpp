#pragma once
#include "engine/model/design.hpp"
#include "lang/check/meaning.hpp"
#include "lang/source/source_map.hpp"

namespace leat::lower {

// Lays the drawing of a junction out as cells: the grid, what each cell is filled with, the cells
// of the ports, and where in the text each cell is drawn. Fill ids are the marks' places; the fill
// after the last mark is that of the rim, open or rock as the junction's outside is.
void lower_cells(check::Meaning const&, std::size_t junction, model::Design&, source::SourceMap&);

}  // namespace leat::lower
