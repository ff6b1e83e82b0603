#include "engine/explore/switching.hpp"

#include <algorithm>
#include <set>

#include "engine/body/shape.hpp"
#include "engine/body/travel.hpp"
#include "engine/water/settling.hpp"

namespace leat::explore {

using body::End;
using body::Position;
using body::Surroundings;
using model::Cell;

namespace {

using Positions = std::set<Position>;

// What one settled water does with a body from one inlet, by itself.
struct Own {
  body::RouteGraph graph;
  body::Outcome outcome;
  std::set<Cell> trapped;
};

Own own_way(model::Design const& design, Surroundings const& here, model::InletId inlet,
            body::OutletCells const& outlets) {
  Own own;
  own.graph = body::route_graph(here, body::entries(here, design.inlets[inlet].cells), outlets);
  own.outcome = body::outcome_of(own.graph);
  for (std::uint32_t i = 0; i < own.graph.size(); ++i) {
    if (own.outcome.is_trapped[i]) own.trapped.insert(own.graph.positions[i].feet);
  }
  return own;
}

bool selects(Own const& own, model::OutletId outlet) {
  return std::binary_search(own.outcome.outlets.begin(), own.outcome.outlets.end(), outlet);
}

// The bodies of one inlet and profile on their way through one change.
class Crowd {
 public:
  Crowd(model::Profile const& profile, body::OutletCells const& outlets, Own const& before)
      : profile_(profile), outlets_(outlets) {
    for (std::uint32_t i = 0; i < before.graph.size(); ++i) {
      auto const end = before.graph.ends[i];
      if (end != End::outlet && end != End::spill) inside_.insert(before.graph.positions[i]);
    }
  }

  // The cells of the new arrangement are there: bodies that no longer fit are crushed.
  void meet(model::Arrangement const& after, water::Field const& field) {
    Surroundings const here(after, field, profile_);
    for (auto at = inside_.begin(); at != inside_.end();) {
      if (here.fits(at->feet)) {
        ++at;
        continue;
      }
      crushed.insert(at->feet);
      at = inside_.erase(at);
    }
    Positions remembering;
    for (auto const& at : inside_) remembering.insert(body::forgetful(here, at));
    inside_ = std::move(remembering);
  }

  // One water step: at most one move that is no fall, and falls before and after it.
  void move(model::Arrangement const& after, water::Field const& field) {
    Surroundings const here(after, field, profile_);
    fall_on(here);
    Positions reached = inside_;
    for (auto const& at : inside_) {
      for (auto const& move : body::moves_from(here, at)) arrive(here, move.to, reached);
    }
    inside_ = std::move(reached);
    fall_on(here);
  }

  std::vector<Position> inside() const { return {inside_.begin(), inside_.end()}; }

  std::set<Cell> crushed;
  std::set<model::OutletId> delivered;
  std::set<Cell> spilled;

 private:
  void arrive(Surroundings const& here, Position to, Positions& reached) {
    if (auto const outlet = outlets_.find(to.feet); outlet != outlets_.end()) {
      delivered.insert(outlet->second);
    } else if (!here.grid().is_inside(to.feet)) {
      spilled.insert(to.feet);
    } else {
      reached.insert(to);
    }
  }

  void fall_on(Surroundings const& here) {
    std::vector<Position> open(inside_.begin(), inside_.end());
    while (!open.empty()) {
      auto const at = open.back();
      open.pop_back();
      if (here.is_wet(at.feet)) continue;
      for (auto const& move : body::moves_from(here, at)) {
        Positions reached;
        arrive(here, move.to, reached);
        for (auto const& to : reached) {
          if (inside_.insert(to).second) open.push_back(to);
        }
      }
    }
  }

  model::Profile const& profile_;
  body::OutletCells const& outlets_;
  Positions inside_;
};

std::vector<Cell> listed(std::set<Cell> const& cells) { return {cells.begin(), cells.end()}; }

// Everything needed to compare one inlet and profile before, during and after.
struct Passing {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  Own before, after;
  Crowd crowd;
};

// The feet cells at which bodies are held for ever that neither water alone would hold there: where
// they come to rest, and loops without a way out.
std::set<Cell> newly_trapped(body::RouteGraph const& graph, body::Outcome const& outcome,
                             Passing const& passing) {
  std::vector<std::uint32_t> held;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (outcome.is_trapped[i] && graph.ends[i] != End::none) held.push_back(i);
  }
  if (outcome.has_trap) {
    for (auto const& loop : body::closed_loops(graph))
      held.insert(held.end(), loop.begin(), loop.end());
  }
  std::set<Cell> cells;
  for (auto i : held) {
    auto const feet = graph.positions[i].feet;
    if (!passing.before.trapped.count(feet) && !passing.after.trapped.count(feet))
      cells.insert(feet);
  }
  return cells;
}

// The dangers of one crowd after the water has settled again, and how long it takes to leave.
std::optional<int> conclude(Surroundings const& settled, body::OutletCells const& outlets,
                            Passing& passing, std::vector<Danger>& dangers) {
  auto const graph = body::route_graph(settled, passing.crowd.inside(), outlets);
  auto const outcome = body::outcome_of(graph);
  auto& crowd = passing.crowd;
  crowd.delivered.insert(outcome.outlets.begin(), outcome.outlets.end());
  auto const report = [&](Danger::Kind kind, std::optional<model::OutletId> outlet,
                          std::vector<Cell> cells) {
    dangers.push_back({kind, passing.inlet, passing.profile, outlet, std::move(cells)});
  };
  for (auto outlet : crowd.delivered) {
    if (!selects(passing.before, outlet) && !selects(passing.after, outlet)) {
      report(Danger::Kind::misrouted, outlet, {});
    }
  }
  auto const trapped = newly_trapped(graph, outcome, passing);
  if (!trapped.empty()) report(Danger::Kind::trapped, {}, listed(trapped));
  bool const spills = outcome.spills || !crowd.spilled.empty();
  if (spills && !passing.before.outcome.spills && !passing.after.outcome.spills) {
    report(Danger::Kind::spilled, {}, listed(crowd.spilled));
  }
  if (!crowd.crushed.empty()) report(Danger::Kind::crushed, {}, listed(crowd.crushed));
  if (outcome.has_trap) return std::nullopt;
  return body::longest_trip(settled, graph);
}

}  // namespace

Switching switching(model::Design const& design, Histories const& histories, std::uint32_t change) {
  auto const& from = histories.waters[histories.changes[change].from];
  auto const& to = histories.waters[histories.changes[change].to];
  model::Arrangement const before(design, histories.settings[from.setting]);
  model::Arrangement const after(design, histories.settings[to.setting]);
  auto const outlets = body::outlet_cells(design);

  std::vector<Passing> passings;
  for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
    Surroundings const old_here(before, from.field, design.profiles[profile]);
    Surroundings const new_here(after, to.field, design.profiles[profile]);
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      auto own_before = own_way(design, old_here, inlet, outlets);
      auto own_after = own_way(design, new_here, inlet, outlets);
      Crowd crowd(design.profiles[profile], outlets, own_before);
      passings.push_back(
          {inlet, profile, std::move(own_before), std::move(own_after), std::move(crowd)});
    }
  }
  water::Settling settling(before, from.field, after);
  for (auto& passing : passings) passing.crowd.meet(after, settling.field());
  // A water that never rests was cut off when it was settled; its bodies are followed as far.
  bool is_moving = true;
  while (is_moving) {
    for (auto& passing : passings) passing.crowd.move(after, settling.field());
    is_moving = settling.field() != to.field && settling.step();
  }
  auto const step_ticks = design.practice[model::Rule::step_ticks];
  Switching result{change, {}, settling.steps() * step_ticks};
  for (auto& passing : passings) {
    Surroundings const settled(after, to.field, design.profiles[passing.profile]);
    auto const trip = conclude(settled, outlets, passing, result.dangers);
    result.clearing =
        trip && result.clearing
            ? std::optional(std::max(*result.clearing, settling.steps() * step_ticks + *trip))
            : std::nullopt;
  }
  return result;
}

std::optional<int> clearing_time(model::Design const& design, Histories const& histories,
                                 std::uint32_t water) {
  auto const& [setting, field, is_settled] = histories.waters[water];
  model::Arrangement const arrangement(design, histories.settings[setting]);
  auto const outlets = body::outlet_cells(design);
  std::optional<int> longest = 0;
  for (auto const& profile : design.profiles) {
    Surroundings const here(arrangement, field, profile);
    for (auto const& inlet : design.inlets) {
      auto const graph = body::route_graph(here, body::entries(here, inlet.cells), outlets);
      auto const trip =
          body::outcome_of(graph).has_trap ? std::nullopt : body::longest_trip(here, graph);
      longest = trip && longest ? std::optional(std::max(*longest, *trip)) : std::nullopt;
    }
  }
  return longest;
}

}  // namespace leat::explore
