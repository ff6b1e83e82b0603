#pragma once
#include <string>

#include "lang/render/picture/scene.hpp"

// What lies over the cells of a cut, and around them.
namespace leat::render {

// The edges between solid cells and others as one path, along rows first and then along columns,
// neighbouring edges joined: the walls.
std::string wall_lines(model::Design const&, Plane const&);
// The numbers of columns and rows: every one while they have two digits, then every fifth.
std::string rulers(Plane const&);

// The ways of bodies, each inlet's with its own line: colour, dashes, and a lane beside the others.
std::string ways(PictureScene const&, Plane const&);
// The names of inlets and outlets, each once: on the lowest level, or in a section, that shows it.
std::string port_names(PictureScene const&, Plane const&);
// The numbers of findings at their cells.
std::string pins(PictureScene const&, Plane const&);

// A line of a way for the legend, from 0, 0 to the right.
std::string way_sample(std::size_t number, int length);
// The shape of a pin around 0, 0.
std::string pin_shape(Pin const&);

}  // namespace leat::render
