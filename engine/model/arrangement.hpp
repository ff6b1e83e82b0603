#pragma once
#include <vector>

#include "engine/model/design.hpp"

// A design under one setting of its controls: every cell has exactly one material.
namespace leat::model {

// What a cell is made of follows from its fill, and cells of one fill switch together; so an
// arrangement keeps one material a fill and nothing a cell.
class Arrangement {
 public:
  // `powered[f]` says whether the control of fill f is powered; unswitched fills are not asked.
  // The design must outlive the arrangement, and its fills stay where they are.
  Arrangement(Design const& design, std::vector<bool> const& powered);

  Design const& design() const { return *design_; }
  Grid const& grid() const { return design_->grid; }
  Practice const& practice() const { return design_->practice; }
  bool outside_is_open() const { return design_->outside_is_open; }
  Material const& operator[](Cell c) const { return made_of_[design_->fill_of[c]]; }
  MaterialId material_of(Cell c) const { return material_of_fill_[design_->fill_of[c]]; }
  Material const& made_of(FillId fill) const { return made_of_[fill]; }

 private:
  Design const* design_;
  std::vector<Material> made_of_;  // by fill, as are their ids
  std::vector<MaterialId> material_of_fill_;
};

// The cells whose fill is wanted, ascending, rim included: `is_wanted` has one value a fill.
//
// Idea: most stretches of a drawing hold none, so whole stretches are compared with each wanted
// fill, which a compiler turns into wide instructions, and only those that hold one are looked at
// cell by cell. Cost: one reading of the fills for each wanted one; a look-up a cell where many are
// wanted.
std::vector<Cell> cells_filled(Design const&, std::vector<bool> const& is_wanted);

}  // namespace leat::model
