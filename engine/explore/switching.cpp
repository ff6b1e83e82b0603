#include "engine/explore/switching.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "engine/body/pace.hpp"
#include "engine/body/shape.hpp"
#include "engine/body/travel.hpp"
#include "engine/explore/phases.hpp"
#include "engine/water/settle.hpp"
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

// How many moves, falls apart, a body makes at most while the water makes one step.
int most_moves(model::Practice const& practice) {
  auto const cells = practice[model::Rule::step_ticks] * body::fastest_in_water(practice);
  return std::max(1, static_cast<int>(std::ceil(cells)));
}

// The bodies of one inlet and profile on their way through one change.
class Crowd {
 public:
  // `is_open`: others enter by the inlet meanwhile.
  Crowd(model::Profile const& profile, model::Port const& inlet, bool is_open,
        body::OutletCells const& outlets, Own const& before)
      : profile_(profile), inlet_(inlet), is_open_(is_open), outlets_(outlets) {
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
    for (auto const& at : entering_at(here)) arrive(here, at, at, inside_);
  }

  // Cells and water are others than before: where the water has come to a body, or a floor under
  // it, it remembers what the rules say of such a place.
  void forget(Surroundings const& here) {
    Positions remembering;
    for (auto const& at : inside_) remembering.insert(remembering.end(), body::forgetful(here, at));
    inside_ = std::move(remembering);
  }

  // One water step: at most so many moves that are no falls, and falls before and after each. Those
  // who come nowhere new have been everywhere, however many moves there still are.
  void move(model::Arrangement const& after, water::Field const& field) {
    Surroundings const here(after, field, profile_);
    forget(here);
    auto moving = inside();
    fall_on(here, moving);
    auto const most = most_moves(after.practice());
    for (int made = 0; made < most && !moving.empty(); ++made) {
      Positions reached;
      for (auto const& at : moving) {
        for (auto const& move : body::moves_from(here, at)) arrive(here, at, move.to, reached);
      }
      moving.clear();
      for (auto const& to : reached) {
        if (inside_.insert(to).second) moving.push_back(to);
      }
      fall_on(here, moving);
    }
  }

  // The water rests for so many ticks. Whoever can leave in that time has left; who entered
  // meanwhile can be anywhere on the way from the inlet. Gives the ticks after which the last one
  // has left; none where someone has not.
  std::optional<int> wait(model::Arrangement const& arrangement, water::Field const& field,
                          int ticks) {
    Surroundings const here(arrangement, field, profile_);
    auto const graph = body::route_graph(here, inside(), outlets_);
    auto const trip = body::longest_trip(here, graph);
    bool const has_left = trip && *trip <= ticks;
    inside_.clear();
    stay(graph, [&](std::uint32_t i) { return !has_left || graph.ends[i] != End::none; });
    stay(body::route_graph(here, entering_at(here), outlets_), [](std::uint32_t) { return true; });
    return inside_.empty() ? trip : std::nullopt;
  }

  std::vector<Position> inside() const { return {inside_.begin(), inside_.end()}; }

  std::set<Cell> crushed;
  std::set<model::OutletId> delivered;
  bool has_spilled = false;
  std::set<Cell> spilled;  // the last ones inside, of those who left while the water moved

 private:
  std::vector<Position> entering_at(Surroundings const& here) const {
    return is_open_ ? body::entries(here, inlet_.cells) : std::vector<Position>{};
  }

  // Those positions of a route graph that are neither delivered nor outside are where bodies are.
  template <class Chosen>
  void stay(body::RouteGraph const& graph, Chosen const& is_chosen) {
    for (std::uint32_t i = 0; i < graph.size(); ++i) {
      auto const& at = graph.positions[i];
      if (graph.ends[i] == End::outlet) {
        delivered.insert(graph.outlets[i]);
      } else if (graph.ends[i] == End::spill) {
        has_spilled = true;
      } else if (is_chosen(i)) {
        inside_.insert(at);
      }
    }
  }

  void arrive(Surroundings const& here, Position from, Position to, Positions& reached) {
    if (auto const outlet = outlets_.find(to.feet); outlet != outlets_.end()) {
      delivered.insert(outlet->second);
    } else if (!here.grid().is_inside(to.feet)) {
      has_spilled = true;
      spilled.insert(from.feet);
    } else {
      reached.insert(to);
    }
  }

  // Adds to some of those inside where they fall to, as far as nobody was there.
  void fall_on(Surroundings const& here, std::vector<Position>& falling) {
    for (std::size_t i = 0; i < falling.size(); ++i) {
      auto const at = falling[i];
      if (here.is_wet(at.feet)) continue;
      for (auto const& move : body::moves_from(here, at)) {
        Positions reached;
        arrive(here, at, move.to, reached);
        for (auto const& to : reached) {
          if (inside_.insert(to).second) falling.push_back(to);
        }
      }
    }
  }

  model::Profile const& profile_;
  model::Port const& inlet_;
  bool is_open_;
  body::OutletCells const& outlets_;
  Positions inside_;
};

std::vector<Cell> listed(std::set<Cell> const& cells) { return {cells.begin(), cells.end()}; }

// Everything needed to compare one inlet and profile before, during and after.
struct Passing {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  Own before, after;
  Crowd crowd;                    // with those who enter after the event
  Crowd witnesses;                // those who were inside then, for how long they take to leave
  std::optional<int> has_left{};  // ticks after the event, where all witnesses left in a phase
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

// The dangers of one crowd after the water has settled again.
void conclude(Surroundings const& settled, body::OutletCells const& outlets, Passing& passing,
              std::vector<Danger>& dangers) {
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
  bool const spills = outcome.spills || crowd.has_spilled;
  if (spills && !passing.before.outcome.spills && !passing.after.outcome.spills) {
    report(Danger::Kind::spilled, {}, listed(crowd.spilled));
  }
  if (!crowd.crushed.empty()) report(Danger::Kind::crushed, {}, listed(crowd.crushed));
}

// How long from now on until those who were inside at the event have left; none without bound.
std::optional<int> last_leaves(Surroundings const& settled, body::OutletCells const& outlets,
                               Crowd const& witnesses) {
  auto const graph = body::route_graph(settled, witnesses.inside(), outlets);
  if (body::outcome_of(graph).has_trap) return std::nullopt;
  return body::longest_trip(settled, graph);
}

// The cells and their water on the way through the phases of one change, with all crowds in it.
class Passage {
 public:
  Passage(model::Design const& design, model::Arrangement const& before, water::Field const& field)
      : design_(design),
        outlets_(body::outlet_cells(design)),
        arrangements_{before},
        field_(field) {
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
        Surroundings const here(before, field, design.profiles[profile]);
        auto own = own_way(design, here, inlet, outlets_);
        Crowd crowd(design.profiles[profile], design.inlets[inlet], true, outlets_, own);
        Crowd witnesses(design.profiles[profile], design.inlets[inlet], false, outlets_, own);
        passings_.push_back(
            {inlet, profile, std::move(own), {}, std::move(crowd), std::move(witnesses)});
      }
    }
  }

  // One phase from tick `begins` on; `lasts` is its time in ticks, none for the last one. The ticks
  // until its water rests.
  int run(Setting const& setting, int begins, std::optional<int> lasts) {
    arrangements_.emplace_back(design_, setting);
    auto const& after = arrangements_.back();
    water::Settling settling(arrangements_[arrangements_.size() - 2], field_, after, is_settled_);
    for_each_crowd([&](Crowd& crowd) { crowd.meet(after, settling.field()); });
    auto const step_ticks = design_.practice[model::Rule::step_ticks];
    // The water steps with its own beat, however the phases lie to it; bodies move in every phase.
    auto const most_steps =
        lasts ? (begins + *lasts) / step_ticks - begins / step_ticks : water::most_steps(after);
    bool is_moving = true;
    do {
      for_each_crowd([&](Crowd& crowd) { crowd.move(after, settling.field()); });
      is_moving = settling.steps() == most_steps || settling.step();
    } while (is_moving && settling.steps() < most_steps);
    is_settled_ = !is_moving;
    auto const ticks = settling.steps() * step_ticks;
    field_ = settling.take_field();
    if (lasts && !is_moving) stand(begins + ticks, *lasts - ticks);
    return ticks;
  }

  // The water rests from tick `begins` on for so many ticks.
  void stand(int begins, int ticks) {
    for (auto& passing : passings_) {
      passing.crowd.wait(arrangements_.back(), field_, ticks);
      auto const left = passing.witnesses.wait(arrangements_.back(), field_, ticks);
      if (left && !passing.has_left) passing.has_left = begins + *left;
    }
  }

  // What it comes to in the last settled water, `ticks` after the event.
  void conclude_all(int ticks, Switching& result) {
    for (auto& passing : passings_) {
      Surroundings const here(arrangements_.back(), field_, design_.profiles[passing.profile]);
      passing.after = own_way(design_, here, passing.inlet, outlets_);
      passing.crowd.forget(here);
      passing.witnesses.forget(here);
      conclude(here, outlets_, passing, result.dangers);
      auto const rest = last_leaves(here, outlets_, passing.witnesses);
      auto const leaves = rest ? std::optional(ticks + *rest) : std::nullopt;
      result.clearing.push_back(passing.has_left ? passing.has_left : leaves);
    }
  }

 private:
  template <class Visit>
  void for_each_crowd(Visit&& visit) {
    for (auto& passing : passings_) {
      visit(passing.crowd);
      visit(passing.witnesses);
    }
  }

  model::Design const& design_;
  body::OutletCells outlets_;
  std::vector<model::Arrangement> arrangements_;  // the one before, then one a phase
  water::Field field_;
  bool is_settled_ = true;
  std::vector<Passing> passings_;
};

void run_switching(model::Design const& design, Histories const& histories, Switching& switching) {
  auto const& from = histories.waters[switching.water];
  model::Arrangement const before(design, histories.settings[from.setting]);
  Passage passage(design, before, from.field);
  auto const& phases = switching.phases;
  if (phases.front().tick > 0) passage.stand(0, phases.front().tick);
  int ticks = 0;
  for (std::size_t p = 0; p < phases.size(); ++p) {
    auto const lasts =
        p + 1 < phases.size() ? std::optional(phases[p + 1].tick - phases[p].tick) : std::nullopt;
    ticks = phases[p].tick + passage.run(phases[p].setting, phases[p].tick, lasts);
  }
  passage.conclude_all(ticks, switching);
}

// Gathers the changes: equal ones once.
bool gather(Explored const& explored, SwitchingBudget const& budget,
            std::vector<Switching>& found) {
  auto const& [design, machine, states, histories, combinations, truth] = explored;
  if (histories.nodes.size() * states.events > budget.most_occurrences) return false;
  Schedule schedule(explored, budget.most_ticks);
  std::map<std::pair<std::uint32_t, std::vector<Phase>>, std::size_t> known;
  for (std::uint32_t node = 0; node < histories.nodes.size(); ++node) {
    auto const [state, water, parent, event_before] = histories.nodes[node];
    for (std::size_t event = 0; event < states.events; ++event) {
      if (states.after(state, event) == States::none) continue;
      auto const phases = schedule.phases(state, event);
      if (!phases) return false;
      if (phases->empty()) continue;
      auto const [entry, is_new] = known.try_emplace({water, *phases}, found.size());
      if (is_new && found.size() == budget.most_switchings) return false;
      if (is_new) found.push_back({water, *phases, {}, {}, {}});
      found[entry->second].occurrences.emplace_back(node, event);
    }
  }
  return true;
}

}  // namespace

std::optional<int> longer(std::optional<int> a, std::optional<int> b) {
  return a && b ? std::optional(std::max(*a, *b)) : std::nullopt;
}

std::optional<int> longest(Clearing const& clearing) {
  std::optional<int> most = 0;
  for (auto const& ticks : clearing) most = longer(most, ticks);
  return most;
}

Switchings switchings(Explored const& explored, SwitchingBudget const& budget,
                      std::function<void(std::size_t, std::size_t)> const& progress) {
  Switchings result;
  if (!explored.histories.is_followed || !explored.histories.is_complete) return result;
  result.is_complete = gather(explored, budget, result.all);
  if (!result.is_complete) return {};
  for (std::size_t i = 0; i < result.all.size(); ++i) {
    run_switching(explored.design, explored.histories, result.all[i]);
    if (progress) progress(i + 1, result.all.size());
  }
  return result;
}

}  // namespace leat::explore
