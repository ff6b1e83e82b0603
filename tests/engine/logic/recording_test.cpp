#include "engine/logic/recording.hpp"

#include "engine/contract.hpp"
#include "engine/logic/timed.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using logic::Deed;
using logic::Handling;
using logic::record;
using model::SignalKind;
using Ticks = std::vector<int>;

TEST_CASE("a lever is flipped, or set; setting it as it stands changes nothing") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  auto const run = record(circuit.built(),
                          {{2, lever, Handling::flip},
                           {4, lever, Handling::turn_on},
                           {6, lever, Handling::turn_off},
                           {8, lever, Handling::turn_off},
                           {9, lever, Handling::flip}},
                          {0, 20});
  CHECK(run.changes[lever] == Ticks{2, 6, 9});
  CHECK_FALSE(run.is_on(lever, 1));
  CHECK(run.is_on(lever, 2));
  CHECK(run.is_on(lever, 5));
  CHECK_FALSE(run.is_on(lever, 8));
  CHECK(run.is_on(lever, 1000));
}

TEST_CASE("a button is pressed whatever is said, and again before it is over") {
  wired::Circuit circuit;
  auto const button = circuit.input(SignalKind::button, 5);
  auto const run = record(circuit.built(),
                          {{1, button, Handling::turn_off}, {4, button, Handling::flip}}, {0, 40});
  CHECK(run.changes[button] == Ticks{1, 9});
}

TEST_CASE("a run is cut back to one tick after its last activity once nothing is under way") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  auto const late = circuit.delay(circuit.of(lever), 30);
  auto const run = record(circuit.built(), {{3, lever}}, {0, 500});
  CHECK(run.changes[late] == Ticks{33});
  CHECK(run.active_until == 33);
  CHECK(run.last_tick == 34);
  CHECK(run.is_over);
}

TEST_CASE("a run goes on for as long as is asked") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  circuit.delay(circuit.of(lever), 30);
  SECTION("and is over when nothing is under way at its end") {
    auto const run = record(circuit.built(), {{3, lever}}, {50, 50});
    CHECK(run.last_tick == 50);
    CHECK(run.active_until == 33);
    CHECK(run.is_over);
  }
  SECTION("and is not over when a change is still on its way") {
    auto const run = record(circuit.built(), {{3, lever}}, {20, 20});
    CHECK(run.last_tick == 20);
    CHECK(run.changes[1].empty());
    CHECK(run.active_until == 3);
    CHECK_FALSE(run.is_over);
  }
}

TEST_CASE("a run with a clock, or with a delay that feeds itself, is never over") {
  wired::Circuit circuit;
  SECTION("clock") { circuit.input(SignalKind::clock, 7); }
  SECTION("delay") {
    auto const delay = circuit.delay(0, 7);
    circuit.feed(delay, circuit.negation(circuit.of(delay)));
  }
  auto const run = record(circuit.built(), {}, {0, 60});
  CHECK(run.last_tick == 60);
  CHECK_FALSE(run.is_over);
  CHECK(run.changes[0] == Ticks{7, 14, 21, 28, 35, 42, 49, 56});
}

TEST_CASE("what does not get quiet within a tick is told with its ticks") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  // On when the lever is on and it is off, off when it is on: latch 1 looks at itself.
  auto const itself = circuit.of(1);
  circuit.latch(circuit.conjunction(circuit.of(lever), circuit.negation(itself)), itself);
  auto const run = record(circuit.built(), {{3, lever}, {6, lever}}, {10, 10});
  CHECK(run.unquiet == Ticks{3, 4, 5});
  CHECK(run.is_over);
}

TEST_CASE("a run without anything is over at once") {
  wired::Circuit circuit;
  circuit.input();
  auto const run = record(circuit.built(), {}, {0, 200});
  CHECK(run.active_until == 0);
  CHECK(run.last_tick == 1);
  CHECK(run.is_over);
}

TEST_CASE("the recording of any circuit is what its timed run shows tick by tick") {
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const circuit = wired::random_circuit(seed);
    std::vector<Deed> const deeds{{1, 0}, {4, 0}, {5, 0}, {11, 0}};
    auto const run = record(circuit, deeds, {30, 30});
    logic::Timed timed(circuit);
    Ticks unquiet;
    for (int tick = 0; tick <= 30; ++tick) {
      if (tick > 0) {
        for (auto const& deed : deeds) {
          if (deed.tick == tick) timed.put(0, !timed.is_on(0));
        }
        if (!timed.tick()) unquiet.push_back(tick);
      }
      for (model::SignalId s = 0; s < circuit.signals.size(); ++s) {
        INFO("seed " << seed << " tick " << tick << " signal " << s);
        REQUIRE(run.is_on(s, tick) == timed.is_on(s));
      }
    }
    CHECK(run.unquiet == unquiet);
  }
}

TEST_CASE("patience is four times all times, clocks counted whole, and has bounds") {
  wired::Circuit circuit;
  CHECK(logic::patience(circuit.built()) == 200);
  circuit.input(SignalKind::clock, 100);
  circuit.input(SignalKind::button, 30);
  CHECK(logic::patience(circuit.built()) == 4 * 230);
  for (int i = 0; i < 3000; ++i) circuit.input(SignalKind::button, 1'000'000);
  CHECK(logic::patience(circuit.built()) == logic::most_ticks);
}

TEST_CASE("deeds must ascend within the run") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  CHECK_THROWS_AS(record(circuit.built(), {{4, lever}, {3, lever}}, {0, 10}), ContractBroken);
  CHECK_THROWS_AS(record(circuit.built(), {{0, lever}}, {0, 10}), ContractBroken);
  CHECK_THROWS_AS(record(circuit.built(), {{11, lever}}, {0, 10}), ContractBroken);
  CHECK_THROWS_AS(record(circuit.built(), {}, {5, 4}), ContractBroken);
}
