#pragma once
#include <vector>

#include "engine/model/design.hpp"

// A design under one setting of its controls: every cell has exactly one material.
namespace leat::model {

class Arrangement {
 public:
  // `powered[f]` says whether the control of fill f is powered; unswitched fills are not asked.
  // The design must outlive the arrangement.
  Arrangement(Design const& design, std::vector<bool> const& powered);

  Grid const& grid() const { return design_->grid; }
  Practice const& practice() const { return design_->practice; }
  bool outside_is_open() const { return design_->outside_is_open; }
  Material const& operator[](Cell c) const { return design_->materials[material_of_[c]]; }
  MaterialId material_of(Cell c) const { return material_of_[c]; }

 private:
  Design const* design_;
  std::vector<MaterialId> material_of_;
};

}  // namespace leat::model
