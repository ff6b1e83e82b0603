#pragma once
#include <cstdint>
#include <optional>
#include <vector>

#include "engine/model/circuit.hpp"
#include "engine/model/expectation.hpp"
#include "engine/model/grid.hpp"
#include "engine/model/material.hpp"
#include "engine/model/practice.hpp"
#include "engine/model/profile.hpp"

// One junction, or the plant that a works puts together: the whole input of the engine.
namespace leat::model {

// What a cell is made of: one material while its control is powered, another while it is not. A
// cell that never changes has the same material twice and no control.
struct Fill {
  MaterialId powered = material::rock, unpowered = material::rock;
  std::optional<ExpressionId> control;
  bool is_switched() const { return control.has_value(); }
  bool operator==(Fill const&) const = default;
};

using FillId = std::uint32_t;
using InletId = std::uint32_t;
using OutletId = std::uint32_t;

// The cells of an inlet or outlet, ascending.
struct Port {
  std::vector<Cell> cells;
};

// A channel built elsewhere: who is delivered at the outlet enters by the inlet. Each outlet is
// joined at most once.
struct Join {
  OutletId outlet = 0;
  InletId inlet = 0;
  std::optional<int> ticks{};  // on the way, where it is said
};

// The cells whose plates press a signal, ascending.
struct Plate {
  SignalId signal = 0;
  std::vector<Cell> cells;
};

struct Design {
  Grid grid;
  bool outside_is_open = false;
  std::vector<Material> materials{built_in_materials.begin(), built_in_materials.end()};
  std::vector<Fill> fills;
  std::vector<FillId>
      fill_of;  // per cell, rim included; what the rim holds follows outside_is_open
  std::vector<Port> inlets;
  std::vector<Port> outlets;
  std::vector<Join> joins;  // of a works: its ports are those of all that is placed in it
  std::vector<Plate> plates;
  Circuit circuit;
  std::vector<SignalId> used_elsewhere;  // signals that other junctions of the same yard switch by
  std::vector<Profile> profiles;
  Practice practice;
  std::vector<Expectation> expectations;
  std::vector<Acceptance> acceptances;
};

}  // namespace leat::model
