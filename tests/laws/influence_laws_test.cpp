#include <algorithm>
#include <random>

#include "engine/logic/machine.hpp"
#include "engine/water/settle.hpp"
#include "engine/water/settling.hpp"
#include "engine/works/supports.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/laws/random_plant.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

model::Arrangement arranged(model::Design const& design, std::vector<bool> const& levers) {
  return {design, explore::setting_in(design, explore::fills_drawn(design), levers)};
}

std::vector<bool> as_built(model::Design const& design) {
  std::vector<bool> levers;
  for (auto const& signal : design.circuit.signals) levers.push_back(signal.starts_on);
  return levers;
}

std::size_t outside_bounds(water::Bounds const& bounds, water::Field const& field) {
  std::size_t outside = 0;
  auto const& practice = bounds.design().practice;
  for (model::Cell c = 0; c < field.size(); ++c) {
    auto const strength = water::strength(field[c], practice);
    bool const is_source = field[c] == water::source;
    bool const is_within = strength >= bounds.least(c) && strength <= bounds.most(c) &&
                           (!is_source || bounds.may_be_source(c)) &&
                           (is_source || !bounds.is_surely_source(c));
    outside += is_within ? 0u : 1u;
  }
  return outside;
}

}  // namespace

TEST_CASE("law: no step of any history leaves the bounds on the water") {
  std::size_t moved = 0, constant = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    auto const design = laws::random_junction(seed);
    water::Bounds const bounds(design);
    for (model::Cell c = 0; c < design.grid.size(); ++c)
      constant += bounds.may_be_wet(c) && bounds.is_constant(c) ? 1u : 0u;
    std::mt19937 dice(seed);
    auto levers = as_built(design);
    auto field = water::settle_fresh(arranged(design, levers)).field;
    INFO("seed " << seed);
    REQUIRE(outside_bounds(bounds, field) == 0);
    for (int event = 0; event < 6; ++event) {
      auto const before = levers;
      auto const flipped = dice() % levers.size();
      levers[flipped] = !levers[flipped];
      auto const from = arranged(design, before), to = arranged(design, levers);
      water::Settling settling(from, field, to);
      for (int step = 0; step < 400; ++step) {
        REQUIRE(outside_bounds(bounds, settling.field()) == 0);
        if (!settling.step()) break;
        ++moved;
      }
      field = settling.take_field();
    }
  }
  CHECK(moved > 3000);
  CHECK(constant > 3000);
}

// Two players flip the levers: one does all that the other does, and other things between. Where
// the others are not in the support of a cell, its water ends up the same.
TEST_CASE("law: the water of a cell follows from the flips of its support alone") {
  std::size_t compared = 0, differing = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const design = laws::random_row(seed);
    works::Supports const supports(design);
    std::mt19937 dice(seed);
    for (int trial = 0; trial < 4; ++trial) {
      auto const kept = static_cast<model::SignalId>(dice() % design.circuit.signals.size());
      auto one = as_built(design), other = one;
      auto field = water::settle_fresh(arranged(design, one)).field, other_field = field;
      bool is_settled = true;
      auto const flip = [&](std::vector<bool>& levers, water::Field& water, model::SignalId lever) {
        auto const from = arranged(design, levers);
        levers[lever] = !levers[lever];
        auto settled = water::settle_switched(from, water, arranged(design, levers));
        is_settled = is_settled && settled.is_settled;
        water = std::move(settled.field);
      };
      for (int event = 0; event < 8; ++event) {
        auto const lever = static_cast<model::SignalId>(dice() % one.size());
        if (lever == kept) {
          flip(other, other_field, kept);
        } else {
          flip(one, field, lever);
          flip(other, other_field, lever);
        }
      }
      if (!is_settled) continue;
      for (model::Cell c = 0; c < field.size(); ++c) {
        auto const& own = supports.of_water(c);
        differing += field[c] != other_field[c] ? 1u : 0u;
        if (std::find(own.begin(), own.end(), kept) != own.end()) continue;
        ++compared;
        INFO("seed " << seed << ", trial " << trial << ", cell " << c << ", lever " << kept);
        REQUIRE(field[c] == other_field[c]);
      }
    }
  }
  CHECK(compared > 100'000);
  CHECK(differing > 1'000);
}
