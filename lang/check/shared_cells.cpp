#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <tuple>

#include "lang/check/plant_ports.hpp"
#include "lang/diagnostics/catalogue.hpp"

// Ports of different places in the same cells. A body that comes to a cell of an outlet has left
// there, so a cell belongs to one outlet: those that are the very same cells are one outlet by
// several names, and those that share only some are a fault. Where an outlet that is not joined and
// inlets are the very same cells, bodies walk through: the outlet is none, and of these inlets only
// those that something is joined to are left. Inlets take nothing from each other: each enters at
// all its cells. Cost: the cells of all ports, sorted.
namespace leat::check {

namespace {

using diagnostics::Listed;
using Cells = std::vector<model::Place>;

Cells cells_of(Plant const& plant, PlantPort const& port, bool is_outlet) {
  auto const& placed = plant.placed[port.placed];
  auto const& drawn = *plant.drawn[placed.drawn];
  Cells cells;
  for (auto const& own : (is_outlet ? drawn.outlets : drawn.inlets)[port.port])
    cells.push_back(placed.standing.outside(own));
  std::sort(cells.begin(), cells.end());
  return cells;
}

// Takes the marked ports away; gives the new number of each of the others.
std::vector<std::size_t> without(std::vector<bool> const& is_gone, std::vector<PlantPort>& ports) {
  std::vector<std::size_t> number(ports.size(), ports.size());
  std::size_t left = 0;
  for (std::size_t i = 0; i < ports.size(); ++i) {
    if (is_gone[i]) continue;
    number[i] = left;
    if (left != i) ports[left] = std::move(ports[i]);
    ++left;
  }
  ports.resize(left);
  return number;
}

// Names of what is gone go with it.
void renumber(Plant::ByAnyName& names, std::vector<std::size_t> const& number,
              std::vector<PlantPort> const& ports, Plant::ByAnyName& ends) {
  for (auto at = names.begin(); at != names.end();) {
    at->second = number[at->second];
    if (at->second >= ports.size()) {
      at = names.erase(at);
      continue;
    }
    if (!ports[at->second].is_joined) ends.insert(*at);
    ++at;
  }
}

// How far within the works a name was given: the works' own names stand outermost.
auto depth_of(PlantPort const& port) {
  return std::count(port.name.text.begin(), port.name.text.end(), '.');
}

class Settling {
 public:
  Settling(Reading const& reading, Plant& plant) : reading_(reading), plant_(plant) {
    for (auto const& outlet : plant_.outlets) outlets_.push_back(cells_of(plant_, outlet, true));
    for (auto const& inlet : plant_.inlets) inlets_.push_back(cells_of(plant_, inlet, false));
    for (std::size_t o = 0; o < outlets_.size(); ++o)
      one_of_.push_back(first_at_.emplace(outlets_[o], o).first->second);
  }

  bool run() {
    bool const is_sound = share_nothing_by_part() && are_joined_once();
    if (!is_sound) return false;
    unite();
    walk_through();
    number();
    return true;
  }

 private:
  // Told once for each pair of outlets that meet in some cell, at the first cell where they do.
  bool share_nothing_by_part() {
    std::vector<std::pair<model::Place, std::size_t>> taken;
    for (std::size_t o = 0; o < outlets_.size(); ++o) {
      if (one_of_[o] != o) continue;
      for (auto const& cell : outlets_[o]) taken.emplace_back(cell, o);
    }
    std::sort(taken.begin(), taken.end());
    std::map<std::pair<std::size_t, std::size_t>, model::Place> pairs;
    for (std::size_t i = 1; i < taken.size(); ++i) {
      if (taken[i - 1].first == taken[i].first)
        pairs.emplace(std::pair(taken[i - 1].second, taken[i].second), taken[i].first);
    }
    for (auto const& [pair, cell] : pairs) report_part(pair.first, pair.second, cell);
    return pairs.empty();
  }

  void report_part(std::size_t first, std::size_t second, model::Place cell) {
    auto const& one = plant_.outlets[first];
    auto const& other = plant_.outlets[second];
    reading_.sink.report(
        {Listed("outlets-overlap"),
         fmt::format("The outlets '{}' and '{}' share some of their cells, but not all",
                     one.name.text, other.name.text),
         {plant_.placed[other.placed].span,
          fmt::format("'{}' has {} {} {} too", other.name.text, cell.x, cell.y, cell.z), cell},
         {{plant_.placed[one.placed].span,
           fmt::format("'{}' has {} {} {}", one.name.text, cell.x, cell.y, cell.z),
           {}}},
         "Where a body leaves there has to be one outlet: move one of the places so that the "
         "outlets are the very same cells, or lie apart."});
  }

  bool are_joined_once() {
    bool is_sound = true;
    std::map<std::size_t, Channel const*> joined;
    for (auto const& channel : plant_.joins) {
      auto const [known, is_new] = joined.emplace(one_of_[channel.outlet], &channel);
      if (is_new) continue;
      is_sound = false;
      report_joins(*known->second, channel);
    }
    return is_sound;
  }

  void report_joins(Channel const& first, Channel const& second) {
    auto const& one = plant_.outlets[first.outlet].name.text;
    auto const& other = plant_.outlets[second.outlet].name.text;
    auto const cell = outlets_[first.outlet].front();
    reading_.sink.report(
        {Listed("joined-twice"),
         fmt::format("The outlets '{}' and '{}' are one, and it is joined twice", one, other),
         {second.span, fmt::format("'{}' is joined here", other), cell},
         {{first.span, fmt::format("'{}', which is the same cells, is joined here", one), {}}},
         "A channel leads to one place: remove one of the joins, or move one of the places."});
  }

  void unite() {
    is_outlet_gone_.assign(outlets_.size(), false);
    for (std::size_t o = 0; o < outlets_.size(); ++o) {
      if (one_of_[o] == o) continue;
      auto &kept = plant_.outlets[one_of_[o]], &other = plant_.outlets[o];
      if (depth_of(other) < depth_of(kept)) kept.name = other.name;
      kept.is_joined = kept.is_joined || other.is_joined;
      is_outlet_gone_[o] = true;
    }
  }

  void walk_through() {
    is_inlet_gone_.assign(inlets_.size(), false);
    for (std::size_t i = 0; i < inlets_.size(); ++i) {
      auto const same = first_at_.find(inlets_[i]);
      if (same == first_at_.end() || plant_.outlets[same->second].is_joined) continue;
      is_outlet_gone_[same->second] = true;
      is_inlet_gone_[i] = !plant_.inlets[i].is_joined;
    }
  }

  void number() {
    auto const inlets = without(is_inlet_gone_, plant_.inlets);
    auto const left = without(is_outlet_gone_, plant_.outlets);
    std::vector<std::size_t> outlets;
    for (auto const one : one_of_) outlets.push_back(left[one]);
    for (auto& channel : plant_.joins) {
      channel.outlet = outlets[channel.outlet];
      channel.inlet = inlets[channel.inlet];
    }
    renumber(plant_.inlet_names, inlets, plant_.inlets, plant_.end_inlets);
    renumber(plant_.outlet_names, outlets, plant_.outlets, plant_.end_outlets);
  }

  Reading const& reading_;
  Plant& plant_;
  std::vector<Cells> inlets_, outlets_;    // by port
  std::map<Cells, std::size_t> first_at_;  // the first outlet of these cells
  std::vector<std::size_t> one_of_;        // by outlet: the first of the same cells
  std::vector<bool> is_inlet_gone_, is_outlet_gone_;
};

}  // namespace

bool settle_ports(Reading const& reading, Plant& plant) { return Settling(reading, plant).run(); }

}  // namespace leat::check
