#include "engine/model/arrangement.hpp"

#include "engine/contract.hpp"

namespace leat::model {

Arrangement::Arrangement(Design const& design, std::vector<bool> const& powered)
    : design_(&design), material_of_(design.grid.size()) {
  require(powered.size() == design.fills.size(), "Arrangement: one control value a fill");
  std::vector<MaterialId> material_of_fill(design.fills.size());
  for (std::size_t f = 0; f < design.fills.size(); ++f) {
    auto const& fill = design.fills[f];
    material_of_fill[f] = fill.is_switched() && powered[f] ? fill.powered : fill.unpowered;
  }
  for (std::size_t c = 0; c < material_of_.size(); ++c) {
    material_of_[c] = material_of_fill[design.fill_of[c]];
  }
}

}  // namespace leat::model
