#pragma once
#include "engine/body/position.hpp"
#include "engine/model/arrangement.hpp"
#include "engine/model/profile.hpp"
#include "engine/water/current.hpp"
#include "engine/water/field.hpp"

namespace leat::body {

// The push of the water on a body: x east, y south; sizes up to `negligible` are none.
struct Push {
  double x = 0, y = 0;
  static constexpr double negligible = 1e-9;
  bool along_x() const { return x > negligible || x < -negligible; }
  bool along_y() const { return y > negligible || y < -negligible; }
  bool is_none() const { return !along_x() && !along_y(); }
};

// What one body feels at a feet cell, in one settled field (model appendix: cells, fits, wet,
// carried, push). A feet cell may lie in the rim for `fits`; all other questions are asked of feet
// cells inside.
class Surroundings {
 public:
  Surroundings(model::Arrangement const&, water::Field const&, model::Profile const&);

  model::Profile const& profile() const { return profile_; }
  model::Grid const& grid() const { return now_.grid(); }
  model::Practice const& practice() const { return now_.arrangement.practice(); }

  bool fits(Cell feet) const;
  bool is_wet(Cell feet) const { return is_wet_from(feet, 0); }
  bool are_feet_wet(Cell feet) const;
  bool is_wet_above_feet(Cell feet) const { return is_wet_from(feet, 1); }
  // The cell just over the body's head, in any of its columns.
  bool is_wet_over_head(Cell feet) const;
  bool is_carried(Cell feet) const;
  Push push(Cell feet) const;

  // The water and the arrangement themselves, for those who look at single cells.
  water::Moment const& moment() const { return now_; }

 private:
  template <class Test>
  bool any_column(Cell feet, Test) const;
  bool is_wet_from(Cell feet, int level) const;
  Push push_in(Cell) const;

  water::Moment now_;
  model::Profile profile_;
};

}  // namespace leat::body
