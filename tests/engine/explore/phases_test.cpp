#include "engine/explore/phases.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

using Phases = std::vector<explore::Phase>;
constexpr long plenty = 100'000;

// Lever 0 drives `a`; a delay of it drives `c`, later.
model::Design delayed(int ticks) {
  auto design = draw({{"ac"}});
  design.circuit.signals[1] = {model::SignalKind::delay, false, 0, 0, ticks};
  return design;
}

explore::Phase at(Surveyed const& surveyed, int tick, std::vector<bool> const& signals) {
  return {tick,
          explore::setting_in(surveyed.design, explore::fills_drawn(surveyed.design), signals)};
}

}  // namespace

TEST_CASE("without delays all cells change at once") {
  Surveyed const surveyed(draw({{"ac"}}));
  explore::Schedule schedule(surveyed.explored, plenty);
  CHECK(schedule.phases(0, 0) == Phases{at(surveyed, 0, {true, false})});
  CHECK(schedule.phases(0, 1) == Phases{at(surveyed, 0, {false, true})});
  auto const both = surveyed.states.after(surveyed.states.after(0, 0), 1);
  CHECK(schedule.phases(both, 0) == Phases{at(surveyed, 0, {false, true})});
}

TEST_CASE("an event that moves no cell has no phase, with delays or without") {
  Surveyed const plain(draw({{"a."}}));
  CHECK(explore::Schedule(plain.explored, plenty).phases(0, 1) == Phases{});
  auto design = draw({{"a."}});
  add(design, {model::SignalKind::delay, false, 1, 0, 7});
  Surveyed const with_delay(design);
  CHECK(explore::Schedule(with_delay.explored, plenty).phases(0, 1) == Phases{});
  CHECK(explore::Schedule(with_delay.explored, plenty).phases(0, 0) ==
        Phases{at(with_delay, 0, {true, false, false})});
}

TEST_CASE("a delay brings a second phase when its ticks are over, both ways") {
  Surveyed const surveyed(delayed(10));
  explore::Schedule schedule(surveyed.explored, plenty);
  CHECK(schedule.phases(0, 0) ==
        Phases{at(surveyed, 0, {true, false}), at(surveyed, 10, {true, true})});
  auto const on = surveyed.states.after(0, 0);
  CHECK(schedule.phases(on, 0) ==
        Phases{at(surveyed, 0, {false, true}), at(surveyed, 10, {false, false})});
}

TEST_CASE("a chain of delays brings a phase each, and a pulse comes to its end") {
  auto design = delayed(30);
  // `v` is water while the second delay shows the first and lever 0 is on.
  auto const first = model::ExpressionId{1};
  auto const second = add(design, {model::SignalKind::delay, false, first, 0, 5});
  put(design, {0, 0, 0}, {model::material::rock, model::material::open, second});
  Surveyed const surveyed(design);
  explore::Schedule schedule(surveyed.explored, plenty);
  CHECK(schedule.phases(0, 0) ==
        Phases{at(surveyed, 30, {true, true, false}), at(surveyed, 35, {true, true, true})});
  // Shut only while lever 0 is on and the delay is not yet: a pulse as long as the delay.
  auto pulsing = delayed(12);
  auto const still_off = pulsing.circuit.add({model::Operator::negation, 1, 0});
  auto const pulse = pulsing.circuit.add({model::Operator::conjunction, 0, still_off});
  put(pulsing, {0, 0, 0}, {model::material::rock, model::material::open, pulse});
  put(pulsing, {1, 0, 0}, {model::material::open, model::material::open, {}});
  Surveyed const short_shut(pulsing);
  CHECK(explore::Schedule(short_shut.explored, plenty).phases(0, 0) ==
        Phases{at(short_shut, 0, {true, false}), at(short_shut, 12, {true, true})});
}

TEST_CASE("a button stays as it is put: its letting go is an event of its own") {
  auto design = delayed(40);
  design.circuit.signals[0] = {model::SignalKind::button, false, 0, 0, 10};
  Surveyed const surveyed(design);
  explore::Schedule schedule(surveyed.explored, plenty);
  CHECK(schedule.phases(0, 0) ==
        Phases{at(surveyed, 0, {true, false}), at(surveyed, 40, {true, true})});
}

TEST_CASE("past the ticks there is no answer, all calls taken together") {
  Surveyed const surveyed(delayed(10));
  CHECK_FALSE(explore::Schedule(surveyed.explored, 5).phases(0, 0));
  // One call takes the event's tick, ten until the delay shows it, and eleven in which nothing
  // happens.
  explore::Schedule once(surveyed.explored, 30);
  CHECK(once.phases(0, 0));
  CHECK_FALSE(once.phases(0, 0));
  // Without a delay no tick of the logic is run.
  Surveyed const plain(draw({{"ac"}}));
  CHECK(explore::Schedule(plain.explored, 0).phases(0, 0));
}
