#include "engine/works/islands.hpp"

#include <algorithm>
#include <tuple>

#include "engine/contract.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/works/likeness.hpp"

namespace leat::works {

using model::Cell;
using model::Design;

namespace {

// Labels components cell by cell, in ascending order of their first cells.
class Labelling {
 public:
  Labelling(Design const& plant, std::vector<std::uint8_t> const& is_joining)
      : grid_(plant.grid), island_of(grid_.size(), no_island) {
    for_each_row([&](Cell first, Cell end) {
      for (auto c = first; c < end; ++c)
        island_of[c] = is_joining[plant.fill_of[c]] != 0 ? unlabelled : no_island;
    });
    for_each_row([&](Cell first, Cell end) {
      for (auto c = first; c < end; ++c)
        if (island_of[c] == unlabelled) islands.push_back(fill_from(c));
    });
  }

 private:
  model::Grid const& grid_;

 public:
  struct Island {
    Box box;
    std::size_t cells = 0;
  };
  std::vector<std::uint32_t> island_of;
  std::vector<Island> islands;

 private:
  static constexpr std::uint32_t unlabelled = no_island - 1;

  template <class Visit>
  void for_each_row(Visit visit) const {
    for (int z = 0; z < grid_.height(); ++z) {
      for (int y = 0; y < grid_.depth(); ++y) {
        auto const first = grid_.cell({0, y, z});
        visit(first, first + static_cast<Cell>(grid_.width()));
      }
    }
  }

  Island fill_from(Cell first) {
    Island island{{grid_.place(first), grid_.place(first)}, 0};
    take(first);
    while (!open_.empty()) {
      auto const c = open_.back();
      open_.pop_back();
      ++island.cells;
      island.box.include(grid_.place(c));
      for (auto side : model::sides) take(grid_.beside(c, side));
      take(grid_.above(c));
      take(grid_.below(c));
    }
    return island;
  }

  void take(Cell c) {
    if (island_of[c] != unlabelled) return;
    island_of[c] = static_cast<std::uint32_t>(islands.size());
    open_.push_back(c);
  }

  std::vector<Cell> open_;
};

}  // namespace

// The turns are undone, then the mirror. A turn to the left takes east to north.
model::Place place_in_plant(Copy const& copy, model::Grid const& drawing, model::Place own) {
  bool const is_across = copy.posture.is_across();
  auto const last_x = (is_across ? drawing.depth() : drawing.width()) - 1,
             last_y = (is_across ? drawing.width() : drawing.depth()) - 1;
  auto x = own.x, y = own.y;
  switch (copy.posture.quarters) {
    case 1:
      std::tie(x, y) = std::pair(last_x - own.y, own.x);
      break;
    case 2:
      std::tie(x, y) = std::pair(last_x - own.x, last_y - own.y);
      break;
    case 3:
      std::tie(x, y) = std::pair(own.y, last_y - own.x);
      break;
    default:
      break;
  }
  if (copy.posture.is_mirrored) x = last_x - x;
  return {copy.corner.x + x, copy.corner.y + y, copy.corner.z + own.z};
}

std::vector<model::SignalId> support(Part const& part) {
  return logic::variables_of(logic::settled_circuit(part.design.circuit));
}

Copy const& first_copy(Islands const& islands, std::uint32_t part) {
  require(part < islands.parts.size(), "first_copy: a part of the islands");
  return islands.copies[islands.parts[part].copies.front()];
}

std::vector<bool> inlets_in_several(Islands const& islands, std::size_t inlet_count) {
  std::vector<bool> is_known(inlet_count, false), is_in_several(inlet_count, false);
  for (auto const& copy : islands.copies) {
    for (auto inlet : copy.inlets) {
      is_in_several[inlet] = is_known[inlet];
      is_known[inlet] = true;
    }
  }
  return is_in_several;
}

Islands islands_of(Design const& plant) {
  Islands found;
  auto const is_joining = joining_fills(plant);
  Labelling const labelling(plant, is_joining);
  Forms forms(plant, is_joining, labelling.island_of);
  Likeness likeness(plant);
  for (std::uint32_t island = 0; island < labelling.islands.size(); ++island) {
    auto const& [box, cells] = labelling.islands[island];
    auto known = likeness.known(extent_of(box, cells), [&, &box = box](Posture posture) {
      return forms.of(island, box, posture);
    });
    auto copy = std::move(known.form.copy);
    if (known.is_new) found.parts.push_back(part_of(std::move(known.form), plant));
    copy.part = known.number;
    found.parts[copy.part].copies.push_back(static_cast<std::uint32_t>(found.copies.size()));
    found.copies.push_back(std::move(copy));
  }
  return found;
}

}  // namespace leat::works
