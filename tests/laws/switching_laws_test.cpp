#include <algorithm>
#include <optional>
#include <random>

#include "engine/water/settling.hpp"
#include "engine/water/step.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using explore::Danger;

namespace {

// How one body ended that was inside while the cells changed.
struct Ending {
  enum class Kind { delivered, spilled, crushed, resting, going_on } kind;
  model::Cell cell = model::no_cell;
  std::optional<model::OutletId> outlet;
};

// The cells that water takes a body in so many ticks, tick by tick, once nothing makes it faster.
double cells_in_a_step(model::Practice const& practice) {
  using model::Rule;
  double most = 0;
  for (auto won : {practice[Rule::water_push], practice[Rule::water_gravity],
                   practice[Rule::upward_stroke] - practice[Rule::water_gravity]}) {
    double speed = 0;
    for (int tick = 0; tick < 10'000; ++tick)
      speed = speed * practice[Rule::water_drag] / 1000 + won / 1000.0;
    most = std::max(most, speed * practice[Rule::step_ticks]);
  }
  return most;
}

// One body on a random way through one change of the cells: anywhere on its trip when it comes,
// quick or slow while the water moves, and then on until it ends.
class Wanderer {
 public:
  Wanderer(model::Profile const& profile, body::OutletCells const& outlets, double cells_a_step,
           std::mt19937& dice)
      : profile_(profile), outlets_(outlets), cells_a_step_(cells_a_step), dice_(dice) {}

  // `fields`: the water after the change, step by step to rest.
  Ending wander(body::Position at, model::Arrangement const& after,
                std::vector<water::Field> const& fields) {
    at_ = at;
    body::Surroundings const first(after, fields.front(), profile_);
    if (!first.fits(at_.feet)) return {Ending::Kind::crushed, at_.feet, {}};
    // How far it is into its cell when the water steps; a move is done when it is through.
    double into_cell = static_cast<double>(dice_() % 1000) / 1000;
    for (std::size_t step = 0; step + 1 < fields.size(); ++step) {
      body::Surroundings const here(after, fields[step], profile_);
      at_ = body::forgetful(here, at_);
      bool const is_quick = dice_() % 4 != 0;
      if (is_quick) into_cell += cells_a_step_;
      for (; into_cell >= 1; --into_cell) {
        if (!go(here)) into_cell = 1;
        if (auto const end = ended(here)) return *end;
      }
    }
    body::Surroundings const settled(after, fields.back(), profile_);
    at_ = body::forgetful(settled, at_);
    for (int moves = 0; moves < 200; ++moves) {
      if (auto const end = ended(settled)) return *end;
      if (!go(settled)) return {Ending::Kind::resting, at_.feet, {}};
    }
    return {Ending::Kind::going_on, at_.feet, {}};
  }

 private:
  std::optional<Ending> ended(body::Surroundings const& here) const {
    if (auto const outlet = outlets_.find(at_.feet); outlet != outlets_.end())
      return Ending{Ending::Kind::delivered, at_.feet, outlet->second};
    if (!here.grid().is_inside(at_.feet)) return Ending{Ending::Kind::spilled, at_.feet, {}};
    return std::nullopt;
  }

  // One move, where there is any.
  bool go(body::Surroundings const& here) {
    auto const all = body::moves_from(here, at_);
    if (all.empty()) return false;
    at_ = all[dice_() % all.size()].to;
    return true;
  }

  model::Profile const& profile_;
  body::OutletCells const& outlets_;
  double cells_a_step_;
  std::mt19937& dice_;
  body::Position at_;
};

// One inlet's bodies of one profile under one settled water.
struct Own {
  body::RouteGraph graph;
  body::Outcome outcome;

  Own(body::Surroundings const& here, model::Port const& inlet, body::OutletCells const& outlets)
      : graph(body::route_graph(here, body::entries(here, inlet.cells), outlets)),
        outcome(body::outcome_of(graph)) {}
  bool selects(model::OutletId outlet) const {
    return std::count(outcome.outlets.begin(), outcome.outlets.end(), outlet) > 0;
  }
  bool traps_at(model::Cell feet) const {
    for (std::uint32_t i = 0; i < graph.size(); ++i) {
      if (outcome.is_trapped[i] && graph.positions[i].feet == feet) return true;
    }
    return false;
  }
};

bool is_reported(std::vector<Danger> const& dangers, Danger::Kind kind, model::InletId inlet,
                 model::ProfileId profile, Ending const& ending) {
  return std::any_of(dangers.begin(), dangers.end(), [&](Danger const& danger) {
    return danger.kind == kind && danger.inlet == inlet && danger.profile == profile &&
           (kind != Danger::Kind::misrouted || danger.outlet == ending.outlet) &&
           (kind == Danger::Kind::misrouted || kind == Danger::Kind::spilled ||
            std::binary_search(danger.cells.begin(), danger.cells.end(), ending.cell));
  });
}

// The danger that an ending is, where it is one.
std::optional<Danger::Kind> danger_of(Ending const& ending, Own const& before, Own const& after) {
  switch (ending.kind) {
    case Ending::Kind::delivered:
      if (before.selects(*ending.outlet) || after.selects(*ending.outlet)) return std::nullopt;
      return Danger::Kind::misrouted;
    case Ending::Kind::spilled:
      if (before.outcome.spills || after.outcome.spills) return std::nullopt;
      return Danger::Kind::spilled;
    case Ending::Kind::crushed:
      return Danger::Kind::crushed;
    case Ending::Kind::resting:
      if (before.traps_at(ending.cell) || after.traps_at(ending.cell)) return std::nullopt;
      return Danger::Kind::trapped;
    case Ending::Kind::going_on:
      break;
  }
  return std::nullopt;
}

// Bodies of every kind wander through every change of the design; how often each danger was met.
struct Met {
  int of[4] = {0, 0, 0, 0};
};

void wander_through(model::Design const& design, std::mt19937& dice, Met& met) {
  auto const judgement = judge(design);
  auto const& histories = judgement.histories;
  auto const outlets = body::outlet_cells(design);
  auto const cells = cells_in_a_step(design.practice);
  for (auto const& switching : judgement.switchings.all) {
    auto const& from = histories.waters[switching.water];
    model::Arrangement const before(design, histories.settings[from.setting]);
    REQUIRE(switching.phases.size() == 1);
    model::Arrangement const after(design, switching.phases[0].setting);
    std::vector<water::Field> fields{water::switched(before, from.field, after)};
    for (auto next = water::step(after, fields.back()); next != fields.back();
         next = water::step(after, fields.back()))
      fields.push_back(std::move(next));
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      auto const profile = static_cast<model::ProfileId>(dice() % design.profiles.size());
      auto const& body = design.profiles[profile];
      Own const was({before, from.field, body}, design.inlets[inlet], outlets);
      Own const is({after, fields.back(), body}, design.inlets[inlet], outlets);
      for (int trial = 0; trial < 20 && was.graph.size() > 0; ++trial) {
        auto const start = dice() % was.graph.size();
        if (was.graph.ends[start] == body::End::outlet || was.graph.ends[start] == body::End::spill)
          continue;
        auto const ending =
            Wanderer(body, outlets, cells, dice).wander(was.graph.positions[start], after, fields);
        auto const kind = danger_of(ending, was, is);
        if (!kind) continue;
        ++met.of[static_cast<int>(*kind)];
        auto const place = design.grid.place(ending.cell);
        INFO("inlet " << inlet << ", profile " << profile << ", kind " << static_cast<int>(*kind)
                      << ", at " << place.x << ' ' << place.y << ' ' << place.z);
        REQUIRE(is_reported(switching.dangers, *kind, inlet, profile, ending));
      }
    }
  }
}

}  // namespace

TEST_CASE("law: no body that wanders through a change meets a danger that is not told") {
  std::mt19937 dice(29);
  Met met;
  for (unsigned seed = 0; seed < 300; ++seed) {
    INFO("seed " << seed);
    wander_through(laws::random_junction(seed, 1 + static_cast<int>(seed % 2)), dice, met);
  }
  for (auto count : met.of) CHECK(count > 0);
}

// Steps of the water from one tick to a minute, currents that carry a body many cells meanwhile.
TEST_CASE("law: the same in slow water and in quick currents") {
  using model::Rule;
  std::mt19937 dice(31);
  Met met;
  for (unsigned seed = 0; seed < 300; ++seed) {
    INFO("seed " << seed);
    auto design = laws::random_junction(seed, 1 + static_cast<int>(seed % 2));
    constexpr int ticks[] = {1, 5, 20, 100, 1000}, pushes[] = {1, 14, 100, 1000},
                  drags[] = {1, 500, 800, 950, 999};
    design.practice.set(Rule::step_ticks, ticks[dice() % 5]);
    design.practice.set(Rule::water_push, pushes[dice() % 4]);
    design.practice.set(Rule::water_drag, drags[dice() % 5]);
    wander_through(design, dice, met);
  }
  for (auto count : met.of) CHECK(count > 0);
}
