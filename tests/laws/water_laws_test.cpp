#include <algorithm>

#include "engine/water/holes.hpp"
#include "engine/water/intrinsic.hpp"
#include "engine/water/settle.hpp"
#include "engine/water/spread.hpp"
#include "engine/water/step.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using model::Cell;

namespace {

constexpr unsigned designs = 1500;

// How high a state stands in the order dry < flows by strength < falling < source.
int height_of(water::State state) { return state; }

template <class Test>
bool any_cell(water::Moment const& now, Test test) {
  for (Cell c = 0; c < now.field.size(); ++c) {
    if (now.is_wet(c) && test(c)) return true;
  }
  return false;
}

bool has_formed_source(water::Moment const& now) {
  return any_cell(now, [&](Cell c) { return now.is_source(c) && !now.arrangement[c].is_source; });
}

// Water that turns to one side and not to another, because that one leads to a hole.
bool seeks_a_hole(water::Moment const& now) {
  return any_cell(now, [&](Cell c) {
    if (now.strength(c) < 2 || !water::spreads_sideways(now, c)) return false;
    int offered = 0, refused = 0;
    for (auto side : model::sides) {
      auto const n = now.grid().beside(c, side);
      if (!now.may_enter(n) || now.is_source(n)) continue;
      ++(water::offers(now, c, side) ? offered : refused);
    }
    return offered > 0 && refused > 0;
  });
}

}  // namespace

static_assert(water::dry < 1 && 253 < water::falling && water::falling < water::source);

TEST_CASE("law: the quick field is the reference field, cell for cell and step for step") {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    for (auto const& arrangement : laws::arrangements_of(design)) {
      auto const reference = water::settle_reference(arrangement);
      auto const fresh = water::settle_fresh(arrangement);
      INFO("seed " << seed);
      REQUIRE(fresh.field == reference.field);
      REQUIRE(fresh.steps == reference.steps);
    }
  }
}

TEST_CASE("law: from a fresh start no cell's state ever goes down") {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const arrangement = laws::arrangements_of(design).front();
    auto field = water::dry_field(arrangement);
    for (;;) {
      auto const after = water::step(arrangement, field);
      INFO("seed " << seed);
      REQUIRE(std::equal(field.begin(), field.end(), after.begin(),
                         [](auto was, auto is) { return height_of(was) <= height_of(is); }));
      if (after == field) break;
      field = after;
    }
  }
}

TEST_CASE(
    "law: what is wet in a settled field is placed, formed, or supported from beside or above") {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const arrangement = laws::arrangements_of(design).back();
    auto const field = water::settle_fresh(arrangement).field;
    water::Moment const now{arrangement, field};
    auto const is_supported = [&](Cell c) {
      if (!now.may_enter(c)) return false;
      if (now.is_source(c)) {
        return arrangement[c].is_source ||
               water::source_sides(now, c) >= arrangement.practice()[model::Rule::source_makers];
      }
      if (field[c] == water::falling) return now.is_wet(now.grid().above(c));
      return std::any_of(model::sides.begin(), model::sides.end(), [&](auto side) {
        return now.strength(now.grid().beside(c, side)) == now.strength(c) + 1;
      });
    };
    INFO("seed " << seed);
    REQUIRE_FALSE(any_cell(now, [&](Cell c) { return !is_supported(c); }));
  }
}

// The other laws are worth what their designs are worth.
TEST_CASE("the random designs have water that runs, falls, seeks holes and forms sources") {
  unsigned formed = 0, falls = 0, seeks = 0, runs = 0;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const arrangement = laws::arrangements_of(design).front();
    auto const field = water::settle_fresh(arrangement).field;
    water::Moment const now{arrangement, field};
    formed += has_formed_source(now) ? 1 : 0;
    falls += any_cell(now, [&](Cell c) { return field[c] == water::falling; }) ? 1 : 0;
    runs += any_cell(now, [&](Cell c) { return water::is_flow(field[c]) && field[c] < 6; }) ? 1 : 0;
    seeks += seeks_a_hole(now) ? 1 : 0;
  }
  CAPTURE(formed, falls, runs, seeks);
  CHECK(formed > designs / 10);
  CHECK(falls > designs / 2);
  CHECK(runs > designs / 2);
  CHECK(seeks > designs / 3);
}
