#include "engine/works/islands.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <unordered_map>

#include "engine/contract.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/works/island_form.hpp"

namespace leat::works {

using model::Cell;
using model::Design;

namespace {

bool is_joining(model::Material const& material) {
  return material.water_enters || material.body_enters || material.is_source ||
         material.shows_slope;
}

std::vector<std::uint8_t> joining_fills(Design const& plant) {
  std::vector<std::uint8_t> joining;
  for (auto const& fill : plant.fills) {
    auto const &powered = plant.materials[fill.powered],
               &unpowered = plant.materials[fill.unpowered];
    joining.push_back(is_joining(unpowered) ||
                      (fill.is_switched() && (is_joining(powered) || powered != unpowered)));
  }
  return joining;
}

// Labels components cell by cell, in ascending order of their first cells.
class Labelling {
 public:
  explicit Labelling(Design const& plant) : grid_(plant.grid), island_of(grid_.size(), no_island) {
    auto const is_joining = joining_fills(plant);
    for_each_row([&](Cell first, Cell end) {
      for (auto c = first; c < end; ++c)
        island_of[c] = is_joining[plant.fill_of[c]] != 0 ? unlabelled : no_island;
    });
    for_each_row([&](Cell first, Cell end) {
      for (auto c = first; c < end; ++c)
        if (island_of[c] == unlabelled) boxes.push_back(fill_from(c));
    });
  }

 private:
  model::Grid const& grid_;

 public:
  std::vector<std::uint32_t> island_of;
  std::vector<Box> boxes;

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

  Box fill_from(Cell first) {
    Box box{grid_.place(first), grid_.place(first)};
    take(first);
    while (!open_.empty()) {
      auto const c = open_.back();
      open_.pop_back();
      box.include(grid_.place(c));
      for (auto side : model::sides) take(grid_.beside(c, side));
      take(grid_.above(c));
      take(grid_.below(c));
    }
    return box;
  }

  void take(Cell c) {
    if (island_of[c] != unlabelled) return;
    island_of[c] = static_cast<std::uint32_t>(boxes.size());
    open_.push_back(c);
  }

  std::vector<Cell> open_;
};

struct KeyHash {
  std::size_t operator()(std::vector<std::uint32_t> const& key) const {
    std::string_view const bytes(reinterpret_cast<char const*>(key.data()),
                                 key.size() * sizeof(std::uint32_t));
    return std::hash<std::string_view>{}(bytes);
  }
};

// Ports of wider bodies name the lowest corner, which a turn does not keep.
std::vector<Posture> other_postures(Design const& plant) {
  if (std::any_of(plant.profiles.begin(), plant.profiles.end(),
                  [](auto const& profile) { return profile.footprint > 1; }))
    return {};
  return {{false, 1}, {false, 2}, {false, 3}, {true, 0}, {true, 1}, {true, 2}, {true, 3}};
}

}  // namespace

std::vector<model::SignalId> support(Part const& part) {
  return logic::variables_of(logic::settled_circuit(part.design.circuit));
}

Copy const& first_copy(Islands const& islands, std::uint32_t part) {
  auto const copy = std::find_if(islands.copies.begin(), islands.copies.end(),
                                 [part](Copy const& one) { return one.part == part; });
  require(copy != islands.copies.end(), "first_copy: a part of the islands");
  return *copy;
}

Islands islands_of(Design const& plant) {
  Islands islands;
  Labelling const labelling(plant);
  Forms forms(plant, labelling.island_of);
  auto const postures = other_postures(plant);
  std::unordered_map<std::vector<std::uint32_t>, std::uint32_t, KeyHash> parts;
  for (std::uint32_t island = 0; island < labelling.boxes.size(); ++island) {
    auto const& box = labelling.boxes[island];
    auto form = forms.of(island, box, {});
    auto key = form.key();
    auto found = parts.find(key);
    bool is_turned = false;
    for (auto at = postures.begin(); at != postures.end() && found == parts.end(); ++at) {
      auto turned = forms.of(island, box, *at);
      found = parts.find(turned.key());
      if (found == parts.end()) continue;
      form = std::move(turned);
      is_turned = true;
      form.copy.is_across = at->quarters % 2 == 1;
    }
    auto copy = std::move(form.copy);
    if (found == parts.end()) {
      found = parts.emplace(std::move(key), static_cast<std::uint32_t>(islands.parts.size())).first;
      islands.parts.push_back({drawn(std::move(form), plant)});
    }
    copy.part = found->second;
    copy.is_turned = is_turned;
    islands.copies.push_back(std::move(copy));
  }
  return islands;
}

}  // namespace leat::works
