#pragma once
#include <cstdint>
#include <vector>

#include "engine/model/design.hpp"

namespace leat::works {

// Cells of a drawing one after the other, west to east, north to south, upward, that are filled
// alike.
struct Run {
  std::uint32_t end = 0;  // so many cells of the drawing end with it
  model::FillId fill = 0;
};

// A piece of a plant that stands by itself, once for all the places where it stands.
struct Part {
  // With a margin of one cell; its circuit is the cone of its controls. What its cells are made of
  // is kept as runs, since the boxes of many islands can each be nearly the plant.
  model::Design design;
  std::vector<Run> runs;
  std::vector<std::uint32_t> copies;  // among those of the islands, ascending; one at least

  model::Design drawn() const;  // the design with its cells
};

// A symmetry of the square: mirrored or not (west and east change places), then turned by so many
// quarters to the left.
struct Posture {
  bool is_mirrored = false;
  int quarters = 0;
  bool is_across() const { return quarters % 2 == 1; }
  bool operator==(Posture const&) const = default;
};

// One place where a part stands, and what the part's ids are in the plant.
struct Copy {
  std::uint32_t part = 0;
  model::Place corner;  // of the part's drawing, margin included: may lie outside the plant's
  Posture posture;      // that the drawing is in, seen from the plant; a first copy's is none
  // By the part's SignalId. What is a lever there can be a wire here (see islands_of).
  std::vector<model::SignalId> signals;
  std::vector<model::InletId> inlets;      // by its InletId
  std::vector<model::OutletId> outlets;    // by its OutletId
  std::vector<std::uint32_t> acceptances;  // by its place in Design::acceptances
};

// Where a place of the part's drawing lies in the plant.
model::Place place_in_plant(Copy const&, model::Grid const& drawing, model::Place own);

// The inputs and memory that it depends on, in its own ids.
std::vector<model::SignalId> support(Part const&);

struct Islands {
  std::vector<Part> parts;   // each in the posture of its first copy
  std::vector<Copy> copies;  // in the order of their lowest, northernmost, westernmost cells
};

// Contract: a part of the islands.
Copy const& first_copy(Islands const&, std::uint32_t part);

// By inlet of the plant, whether it has cells in several islands: a body enters by any of them.
std::vector<bool> inlets_in_several(Islands const&, std::size_t inlet_count);

// The plant as islands: pieces between which neither water nor bodies pass but by joins, since
// solid cells that never change lie between them.
//
// Idea: cells that water or bodies can ever be in, that change, or that slopes are seen through,
// are joined over their faces; every rule of water and bodies reads only such neighbours, or solid
// cells that never change. So each component is a design of its own, and what it depends on is the
// cone of its own controls, however many signals the plant has. Wires that stand for all the levers
// below them are levers there (logic/modules.hpp), so that a choice among a hundred levers is one
// lever to the junction that it switches. Islands that are alike in cells,
// circuit and ports, up to the 8 symmetries of the square, are one part (likeness.hpp). Of what
// never changes and lets nothing in an island has what it touches, over edges and corners, too.
// Cost: linear in the cells of the bounding boxes, eight times for the first of each part where
// another is as large. Memory: linear in the plant's cells, whatever the boxes.
Islands islands_of(model::Design const& plant);

}  // namespace leat::works
