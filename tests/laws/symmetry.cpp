#include "tests/laws/symmetry.hpp"

#include <algorithm>
#include <utility>

namespace leat::laws {

Symmetry::Symmetry(model::Grid const& from, int number)
    : from_(from), mirrors_(number >= 4), turns_(number % 4) {
  bool const swaps = mirrors_ != (turns_ % 2 == 1);
  to_ = swaps ? model::Grid(from.depth(), from.width(), from.height()) : from;
}

model::Place Symmetry::of(model::Place p) const {
  int width = from_.width(), depth = from_.depth();
  if (mirrors_) {
    std::swap(p.x, p.y);
    std::swap(width, depth);
  }
  for (int i = 0; i < turns_; ++i) {
    p = {depth - 1 - p.y, p.x, p.z};
    std::swap(width, depth);
  }
  return p;
}

model::Cell Symmetry::of_feet(model::Cell feet, int footprint) const {
  auto const low = from_.place(feet);
  auto const a = of(low), b = of({low.x + footprint - 1, low.y + footprint - 1, low.z});
  return to_.cell({std::min(a.x, b.x), std::min(a.y, b.y), low.z});
}

std::vector<model::Cell> Symmetry::of_feet(std::vector<model::Cell> const& cells,
                                           int footprint) const {
  std::vector<model::Cell> result;
  for (auto c : cells) result.push_back(of_feet(c, footprint));
  std::sort(result.begin(), result.end());
  return result;
}

model::Design Symmetry::applied(model::Design const& design, int footprint) const {
  auto turned = design;
  turned.grid = to_;
  // What lies outside is the same everywhere: any corner of the rim shows it.
  turned.fill_of.assign(to_.size(), design.fill_of[0]);
  for (model::Cell c = 0; c < design.grid.size(); ++c) {
    if (design.grid.is_inside(c)) turned.fill_of[of(c)] = design.fill_of[c];
  }
  for (auto* ports : {&turned.inlets, &turned.outlets}) {
    for (auto& port : *ports) port.cells = of_feet(port.cells, footprint);
  }
  return turned;
}

}  // namespace leat::laws
