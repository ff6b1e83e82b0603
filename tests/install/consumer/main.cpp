#include <iostream>

#include "engine/judge.hpp"

using namespace leat;

namespace {

// A straight run of eight cells: a source behind the way in, and head room above. A lever closes it
// before the way out.
model::Design straight_run() {
  model::Design design;
  design.grid = model::Grid(8, 1, 2);
  design.circuit.signals = {{model::SignalKind::lever, false, 0}};
  auto const lever = design.circuit.add({model::Operator::signal, 0, 0});
  namespace material = model::material;
  design.fills = {{material::rock, material::rock, {}},
                  {material::open, material::open, {}},
                  {material::water, material::water, {}},
                  {material::rock, material::open, lever}};
  design.fill_of.assign(design.grid.size(), 0);
  for (int z = 0; z < 2; ++z)
    for (int x = 0; x < 8; ++x) design.fill_of[design.grid.cell({x, 0, z})] = x == 5 ? 3 : 1;
  design.fill_of[design.grid.cell({0, 0, 0})] = 2;
  design.inlets.push_back({{design.grid.cell({1, 0, 0})}});
  design.outlets.push_back({{design.grid.cell({7, 0, 0})}});
  design.profiles.emplace_back();
  return design;
}

}  // namespace

// For each situation, off first, how many outlets are reached.
int main() {
  auto const judged = judge(straight_run());
  if (!judged.is_decided) return 1;
  for (std::size_t i = 0; i < judged.combinations.situations.size(); ++i)
    std::cout << judged.routes.at(i, 0, 0).outlets.size() << '\n';
}
