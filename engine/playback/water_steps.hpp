#pragma once
#include <vector>

#include "engine/model/arrangement.hpp"
#include "engine/playback/playback.hpp"
#include "engine/water/settling.hpp"

namespace leat::playback {

// The looks of a field that moves, kept up to date step by step.
//
// Idea: how a cell looks depends on its own water and material, on those beside it, and on the
// water one lower beside it (water/current.hpp); so after a step only cells near a changed one are
// looked at again. Cost: one comparison of the field a step, and a few currents for each change.
class WaterSteps {
 public:
  explicit WaterSteps(model::Grid const&);  // everything dry

  // What the field of an arrangement changes in the looks so far. `remade`: cells whose material
  // has changed since then.
  Patch follow(model::Arrangement const&, water::Field const&,
               std::vector<model::Cell> const& remade, Numbered<Look>& looks);

 private:
  void look_near(model::Cell, std::vector<model::Cell>& to_look) const;

  model::Grid const& grid_;
  water::Field field_;
  std::vector<Look> looks_;  // by cell
};

}  // namespace leat::playback
