#pragma once
#include "engine/model/design.hpp"

namespace leat::laws {

// One of the eight symmetries of the square, about the vertical: first a mirror (x and y change
// places) or none, then 0 to 3 quarter turns.
class Symmetry {
 public:
  Symmetry(model::Grid const& from, int number);
  static constexpr int count = 8;

  // The drawing seen anew. Ports are places of feet: for a wider body they name its lowest corner,
  // which another corner becomes by turning.
  model::Design applied(model::Design const&, int footprint = 1) const;
  model::Grid const& grid() const { return to_; }
  model::Cell of(model::Cell c) const { return of_feet(c, 1); }
  model::Cell of_feet(model::Cell feet, int footprint) const;
  std::vector<model::Cell> of_feet(std::vector<model::Cell> const&, int footprint) const;
  // An arrow in the plane.
  template <class Vector>
  Vector of_arrow(Vector v) const {
    if (mirrors_) std::swap(v.x, v.y);
    for (int i = 0; i < turns_; ++i) v = {-v.y, v.x};
    return v;
  }

 private:
  model::Place of(model::Place) const;
  model::Grid from_, to_;
  bool mirrors_;
  int turns_;
};

}  // namespace leat::laws
