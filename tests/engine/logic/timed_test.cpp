#include "engine/logic/timed.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using logic::Timed;

TEST_CASE("a button is on for its pulse, counted from the tick of the press") {
  wired::Circuit circuit;
  auto const button = circuit.input(model::SignalKind::button, 3);
  Timed timed(circuit.built());
  timed.press(button);
  std::vector<bool> seen;
  for (int tick = 0; tick < 5; ++tick) {
    timed.tick();
    seen.push_back(timed.is_on(button));
  }
  CHECK(seen == std::vector<bool>{true, true, true, false, false});
}

TEST_CASE("a clock changes every half period") {
  wired::Circuit circuit;
  auto const clock = circuit.input(model::SignalKind::clock, 2);
  Timed timed(circuit.built());
  std::vector<bool> seen;
  for (int tick = 0; tick < 6; ++tick) {
    timed.tick();
    seen.push_back(timed.is_on(clock));
  }
  CHECK(seen == std::vector<bool>{false, true, true, false, false, true});
}

TEST_CASE("a delay shows what its input was so many ticks ago") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  auto const late = circuit.delay(circuit.of(lever), 3);
  Timed timed(circuit.built());
  timed.put(lever, true);
  std::vector<bool> seen;
  for (int tick = 0; tick < 5; ++tick) {
    timed.tick();
    seen.push_back(timed.is_on(late));
  }
  CHECK(seen == std::vector<bool>{false, false, false, true, true});
}

TEST_CASE("a delay in a loop makes a clock of its own") {
  wired::Circuit circuit;
  auto const delay = circuit.delay(0, 2);
  circuit.feed(delay, circuit.negation(circuit.of(delay)));
  Timed timed(circuit.built());
  std::vector<bool> seen;
  for (int tick = 0; tick < 8; ++tick) {
    CHECK(timed.tick());
    seen.push_back(timed.is_on(delay));
  }
  CHECK(std::vector<bool>(seen.begin() + 2, seen.begin() + 4) !=
        std::vector<bool>(seen.begin() + 4, seen.begin() + 6));
}
