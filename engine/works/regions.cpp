#include "engine/works/regions.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/logic/machine.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/logic/truth.hpp"

namespace leat::works {

using model::Cell;
using model::Design;
using model::ExpressionId;

namespace {

constexpr std::size_t most_more = 2, most_of_home = 8;

struct Spot {
  Cell feet;
  model::ProfileId profile;
};
struct Cells {
  std::vector<Spot> spots;
  std::vector<Cell> wet;
};

std::map<Signals, Cells> cells_by_support(Design const& design, Supports const& supports) {
  std::map<Signals, Cells> found;
  for (model::ProfileId p = 0; p < design.profiles.size(); ++p) {
    for (auto feet : supports.feet_cells(design.profiles[p]))
      found[supports.of_moves(feet, design.profiles[p])].spots.push_back({feet, p});
  }
  for (Cell c = 0; c < design.grid.size(); ++c) {
    if (design.grid.is_inside(c) && supports.bounds().may_be_wet(c))
      found[supports.of_surroundings(c)].wet.push_back(c);
  }
  return found;
}

// Of the supports, largest first, the smallest one that holds this one and is not much larger. What
// nothing changes lies everywhere, and would make regions unlike that are alike.
std::optional<std::size_t> home_of(Signals const& own, std::vector<Signals> const& homes) {
  if (own.empty()) return std::nullopt;
  for (auto at = homes.size(); at-- > 0;) {
    if (homes[at].size() > std::min(own.size() + most_more, most_of_home)) return std::nullopt;
    if (includes(homes[at], own)) return at;
  }
  return std::nullopt;
}

}  // namespace

std::vector<Region> regions_of(Design const& design, Supports const& supports) {
  auto const found = cells_by_support(design, supports);
  std::vector<std::map<Signals, Cells>::const_iterator> largest_first;
  for (auto at = found.begin(); at != found.end(); ++at) largest_first.push_back(at);
  std::stable_sort(largest_first.begin(), largest_first.end(),
                   [](auto a, auto b) { return a->first.size() > b->first.size(); });
  std::vector<Signals> homes;
  std::vector<Region> regions;
  for (auto at : largest_first) {
    auto const& [signals, cells] = *at;
    auto home = home_of(signals, homes);
    if (!home) {
      home = homes.size();
      homes.push_back(signals);
      regions.push_back({signals, std::vector<std::vector<Cell>>(design.profiles.size()), {}});
    }
    auto& region = regions[*home];
    for (auto const& [feet, profile] : cells.spots) region.feet[profile].push_back(feet);
    region.wet.insert(region.wet.end(), cells.wet.begin(), cells.wet.end());
  }
  auto const first_of = [](Region const& region) {
    auto first = region.wet.empty() ? model::no_cell : region.wet.front();
    for (auto const& feet : region.feet) {
      if (!feet.empty()) first = std::min(first, feet.front());
    }
    return first;
  };
  for (auto& region : regions) {
    for (auto& feet : region.feet) std::sort(feet.begin(), feet.end());
    std::sort(region.wet.begin(), region.wet.end());
  }
  std::stable_sort(regions.begin(), regions.end(),
                   [&](auto const& a, auto const& b) { return first_of(a) < first_of(b); });
  return regions;
}

AsBuilt::AsBuilt(Design const& design)
    : design_(&design), cones_(design.circuit), held_{design, {}} {
  for (auto* ports : {&held_.design.inlets, &held_.design.outlets}) ports->clear();
  held_.design.joins.clear();
  held_.design.expectations.clear();
  held_.design.used_elsewhere.clear();
  for (auto const& fill : design.fills) {
    if (fill.control && is_known_) settled(*fill.control);
  }
}

// By the machine of what it follows from, which nothing else in the circuit touches.
bool AsBuilt::settled(ExpressionId control) {
  if (auto const known = of_control_.find(control); known != of_control_.end())
    return known->second;
  auto const cone = cones_.of({control});
  is_known_ = logic::variables_of(cone.circuit).size() <= logic::Machine::most_variables;
  if (!is_known_) return false;
  logic::Machine const machine(cone.circuit);
  auto const built = machine.as_built(rounds_left_);
  rounds_left_ -= built.rounds;
  is_known_ = built.is_quiet;
  auto const value =
      is_known_ && logic::is_true(cone.circuit, cone.roots.front(), machine.values(built.code));
  return of_control_[control] = value;
}

model::Arrangement AsBuilt::arrangement() const {
  require(is_known_, "AsBuilt::arrangement: the controls as built are known");
  std::vector<bool> powered;
  for (auto const& fill : design_->fills)
    powered.push_back(fill.control && of_control_.at(*fill.control));
  return {*design_, powered};
}

Held const& AsBuilt::held(Supports const& supports, Region const& region) {
  require(is_known_, "AsBuilt::held: the controls as built are known");
  auto& design = held_.design;
  design.fills = design_->fills;
  design.acceptances = design_->acceptances;
  std::vector<std::optional<ExpressionId>*> kept;
  for (model::FillId f = 0; f < design.fills.size(); ++f) {
    auto& fill = design.fills[f];
    if (!fill.control) continue;
    auto const& signals = supports.of_fill(f);
    if (!signals.empty() && includes(region.signals, signals)) {
      kept.push_back(&fill.control);
      continue;
    }
    auto const made_of = of_control_.at(*fill.control) ? fill.powered : fill.unpowered;
    fill = {made_of, made_of, std::nullopt};
  }
  for (std::size_t a = 0; a < design.acceptances.size(); ++a) {
    auto& condition = design.acceptances[a].condition;
    if (condition && includes(region.signals, supports.of_acceptance(a)))
      kept.push_back(&condition);
  }
  std::vector<ExpressionId> roots;
  for (auto const* use : kept) roots.push_back(**use);
  auto cone = cones_.of(roots);
  for (std::size_t i = 0; i < kept.size(); ++i) *kept[i] = cone.roots[i];
  for (std::size_t a = 0; a < design.acceptances.size(); ++a) {
    auto& condition = design.acceptances[a].condition;
    if (condition && !includes(region.signals, supports.of_acceptance(a)))
      condition = cone.circuit.add({model::Operator::constant, 0, 0});
  }
  design.circuit = std::move(cone.circuit);
  held_.signals = std::move(cone.signals);
  std::vector<model::Plate> plates;
  for (auto const& plate : design_->plates) {
    auto const own = std::find(held_.signals.begin(), held_.signals.end(), plate.signal);
    if (own != held_.signals.end())
      plates.push_back({static_cast<model::SignalId>(own - held_.signals.begin()), plate.cells});
  }
  design.plates = std::move(plates);
  return held_;
}

}  // namespace leat::works
