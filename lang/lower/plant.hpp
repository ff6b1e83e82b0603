#pragma once
#include "engine/model/design.hpp"
#include "lang/lower/circuit_lowering.hpp"
#include "lang/source/source_map.hpp"

namespace leat::lower {

// Puts a works together as one drawing: the cells of all that is placed, turned as it stands, what
// fills each by the signals that the place knows, ports, plates and joins; and where in the text
// each cell is drawn. Cells where nothing stands are as the works' outside.
void lower_plant(check::Meaning const&, std::size_t works, CircuitLowering&, model::Design&,
                 source::SourceMap&);

}  // namespace leat::lower
