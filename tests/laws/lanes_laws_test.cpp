#include <algorithm>
#include <optional>
#include <random>

#include "engine/contract.hpp"
#include "engine/water/lanes.hpp"
#include "engine/water/settling.hpp"
#include "engine/water/step.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/laws/shrink.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

constexpr unsigned designs = 1500;

bool equal(water::Settled const& a, water::Settled const& b) {
  return a.field == b.field && a.steps == b.steps && a.is_settled == b.is_settled;
}

// Random settings of all switched fills, and not only those that two levers make.
std::vector<model::Arrangement> random_arrangements(model::Design const& design, unsigned seed,
                                                    std::size_t count) {
  std::mt19937 dice(seed);
  std::vector<model::Arrangement> arrangements;
  for (std::size_t i = 0; i < count; ++i) {
    std::vector<bool> powered(design.fills.size());
    for (std::size_t f = 0; f < powered.size(); ++f) powered[f] = dice() % 2 == 0;
    arrangements.emplace_back(design, powered);
  }
  return arrangements;
}

std::size_t lanes_of(unsigned seed) { return seed % 16 == 0 ? 64 : 1 + seed % 9; }

// A field in which water still moves: some steps before it rests.
water::Field moving_field(model::Arrangement const& arrangement, int steps) {
  auto field = water::dry_field(arrangement);
  for (int step = 0; step < steps; ++step) field = water::step(arrangement, field);
  return field;
}

// Fresh waters in lanes, and each again after a switch, twice: from rest, or from a field that was
// still moving.
struct Trial {
  model::Design const& design;
  unsigned seed;
  std::vector<model::Arrangement> before = random_arrangements(design, seed, lanes_of(seed));
  std::vector<model::Arrangement> after = random_arrangements(design, seed + 1, lanes_of(seed));

  bool fresh_differ() const {
    auto const lanes =
        seed % 2 == 0 ? water::settle_fresh_lanes(before) : water::settle_all(before);
    return !std::equal(before.begin(), before.end(), lanes.begin(), lanes.end(),
                       [](auto const& arrangement, water::Settled const& settled) {
                         return equal(settled, water::settle_reference(arrangement));
                       });
  }

  std::vector<water::Field> fields() const {
    std::vector<water::Field> all;
    for (std::size_t lane = 0; lane < before.size(); ++lane) {
      bool const rests = lane % 3 != 2;
      all.push_back(rests ? water::settle_reference(before[lane]).field
                          : moving_field(before[lane], static_cast<int>(lane)));
    }
    return all;
  }

  bool switched_differ() const {
    auto const from = fields();
    std::vector<water::Switching> switchings;
    for (std::size_t lane = 0; lane < before.size(); ++lane) {
      switchings.push_back({&before[lane], &from[lane], &after[lane], lane % 3 != 2});
    }
    auto const lanes =
        seed % 2 == 0 ? water::settle_switched_lanes(switchings) : water::settle_all(switchings);
    for (std::size_t lane = 0; lane < before.size(); ++lane) {
      auto const& [old, field, next, was_settled] = switchings[lane];
      auto const reference = water::settle_switched_reference(*old, *field, *next);
      auto const single = water::settle_switched(*old, *field, *next, was_settled);
      if (!equal(lanes[lane], reference) || !equal(single, reference)) return true;
    }
    return false;
  }
};

template <class Fails>
void require_none_fails(Fails fails) {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    if (!fails(design, seed)) continue;
    auto const small =
        laws::shrunk(design, [&](model::Design const& smaller) { return fails(smaller, seed); });
    INFO("seed " << seed << ", shrunk to: " << laws::drawn_in_numbers(small));
    REQUIRE_FALSE(fails(small, seed));
  }
}

}  // namespace

TEST_CASE("law: fresh water in lanes is the reference field of each, step for step") {
  require_none_fails([](model::Design const& design, unsigned seed) {
    return Trial{design, seed}.fresh_differ();
  });
}

TEST_CASE("law: water after a switch, in lanes and alone, is the reference field of each") {
  require_none_fails([](model::Design const& design, unsigned seed) {
    return Trial{design, seed}.switched_differ();
  });
}

TEST_CASE("law: what lanes say of a cell is what the fields and the rule of the current say") {
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const arrangements = random_arrangements(design, seed, 7);
    water::Lanes lanes(arrangements);
    lanes.settle();
    auto const fields = lanes.unpacked();
    auto const touched = lanes.touched();
    for (std::size_t lane = 0; lane < fields.size(); ++lane) {
      auto const& field = fields[lane].field;
      water::Moment const now{arrangements[lane], field};
      for (model::Cell c = 0; c < field.size(); ++c) {
        bool const is_touched = std::count(touched.begin(), touched.end(), c) > 0;
        REQUIRE((is_touched || !now.is_wet(c)));
        REQUIRE(((lanes.is_wet(c) >> lane & 1) != 0) == now.is_wet(c));
        if (!now.is_wet(c)) continue;
        REQUIRE(((lanes.is_strong(c, now.strength(c)) >> lane & 1) != 0));
        REQUIRE(((lanes.is_strong(c, now.strength(c) + 1) >> lane & 1) == 0));
        REQUIRE(lanes.state(c, lane) == field[c]);
        REQUIRE(lanes.current(c, lane) == water::current_at(now, c));
      }
    }
  }
}

TEST_CASE("lanes want 1 to 64 arrangements of one design") {
  auto const design = laws::random_junction(1), other = laws::random_junction(2);
  auto many = random_arrangements(design, 1, 65);
  CHECK_THROWS_AS(water::Lanes(many), ContractBroken);
  CHECK_THROWS_AS(water::Lanes(std::span<model::Arrangement const>{}), ContractBroken);
  std::vector<model::Arrangement> const mixed{many.front(), random_arrangements(other, 1, 1)[0]};
  CHECK_THROWS_AS(water::Lanes(mixed), ContractBroken);
  CHECK(water::settle_fresh_lanes(many).size() == 65);
}

TEST_CASE("lanes are preferred for many arrangements, and for few with scattered water") {
  water::Field field(640);
  CHECK(water::prefers_lanes(2, field));
  field[70] = 3;
  CHECK(water::prefers_lanes(2, field));
  std::fill(field.begin(), field.end(), water::falling);
  CHECK_FALSE(water::prefers_lanes(8, field));
  CHECK_FALSE(water::prefers_lanes(31, field));
  CHECK(water::prefers_lanes(32, field));
  CHECK(water::settle_all(std::span<model::Arrangement const>{}).empty());
}
