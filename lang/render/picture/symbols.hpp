#pragma once
#include <string>

#include "lang/render/picture/scene.hpp"

// The signs of a picture, drawn once and used in each cell. A cell is a square of `cell_size`; each
// sign is a group with an id:
//
//   dry                 ground without water
//   w-5, w-placed, w-formed, w-falling    ground with water: a flow by its strength, a source
//   w-pouring           falling water in a section
//   m-3                 what the cell is made of, by material (none for open and for water)
//   f-e, f-se ...       the current of a flow;  f-still where it has none
//   e-e, e-se ...       the current of a source or of falling water: smaller
//   f-near, f-far       in a section: towards the reader, away from him
//   k-on, k-off         a switched cell, powered or not
//   inlet, outlet       the frames of their cells
namespace leat::render {

inline constexpr int cell_size = 40;

// The signs for all that can be in the scene's design, whatever its signals.
std::string symbol_definitions(Subject const&);

// The ids for one cell; empty where there is nothing to be drawn.
std::string water_symbol(water::WetCell const&, Plane const&);
std::string current_symbol(water::WetCell const&, Plane const&);
std::string material_symbol(model::MaterialId);
// Whether neither water nor bodies may ever be in it, and nothing switches it: it is drawn as one
// with its neighbours of the same material.
bool is_solid(model::Design const&, model::FillId);

}  // namespace leat::render
