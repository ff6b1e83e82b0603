#include "engine/logic/machine.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/counters.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using namespace leat::logic;

namespace {

// A code with the given variables on, inputs first, then memory.
Code on(std::initializer_list<int> variables) {
  Code code = 0;
  for (auto v : variables) code |= Code{1} << v;
  return code;
}

}  // namespace

// Source: function table of the set/reset latch in any TTL databook (74x279, here with active-high
// inputs); both inputs on, which the databooks leave undefined, sets [choice].
TEST_CASE("latch: set, hold, reset") {
  wired::Circuit circuit;
  auto const set = circuit.input(), reset = circuit.input();
  circuit.latch(circuit.of(set), circuit.of(reset));
  Machine const machine(circuit.built());
  CHECK(machine.after(0, 0).code == on({0, 2}));           // set rises: on
  CHECK(machine.after(on({0, 2}), 0).code == on({2}));     // set falls: holds
  CHECK(machine.after(on({2}), 1).code == on({1}));        // reset rises: off
  CHECK(machine.after(on({1}), 1).code == 0);              // reset falls: holds
  CHECK(machine.after(on({1}), 0).code == on({0, 1, 2}));  // both: set
}

// Source: function table of the toggle (T) flip-flop in any logic databook, triggered by the rising
// edge.
TEST_CASE("toggle: flips when its trigger rises, not when it falls") {
  wired::Circuit circuit;
  circuit.toggle(circuit.of(circuit.input()));
  Machine const machine(circuit.built());
  CHECK(machine.after(0, 0).code == on({0, 1}));
  CHECK(machine.after(on({0, 1}), 0).code == on({1}));
  CHECK(machine.after(on({1}), 0).code == on({0}));
}

// Source: count sequence of the 4-bit ripple counter in any TTL databook (74x93).
TEST_CASE("ripple: toggles behind each other count in binary") {
  wired::Circuit circuit;
  auto trigger = circuit.of(circuit.input());
  for (int bit = 0; bit < 4; ++bit) trigger = circuit.negation(circuit.of(circuit.toggle(trigger)));
  Machine const machine(circuit.built());
  Code code = 0;
  for (unsigned count = 1; count <= 33; ++count) {
    code = machine.after(machine.after(code, 0).code, 0).code;
    CHECK(code >> 1 == count % 16);
  }
}

TEST_CASE("memory elements whose triggers rise together change together") {
  wired::Circuit circuit;
  auto const clock = circuit.of(circuit.input());
  // Each toggle flips only while the other one is off, as both were before the round.
  auto const first = circuit.toggle(clock), second = circuit.toggle(clock);
  Machine const machine(circuit.built());
  CHECK(machine.variables() == std::vector<model::SignalId>{0, first, second});
  CHECK(machine.after(0, 0).code == on({0, 1, 2}));
}

TEST_CASE("oscillation: a delay that feeds its own negation never gets quiet") {
  wired::Circuit circuit;
  auto const lever = circuit.of(circuit.input());
  auto const delay = circuit.delay(lever, 4);
  circuit.feed(delay, circuit.conjunction(lever, circuit.negation(circuit.of(delay))));
  Machine const machine(circuit.built());
  auto const settled = machine.after(0, 0);
  CHECK_FALSE(settled.is_quiet);
  CHECK(settled.oscillation.loop == std::vector<model::SignalId>{delay});
  CHECK(settled.oscillation.period == 2);
  std::vector<Code> to;
  CHECK(machine.after({0}, 0, to) == 1);
}

TEST_CASE("law: 64 machines side by side do what one does") {
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const circuit = wired::random_circuit(seed);
    Machine const machine(circuit);
    auto const start = machine.as_built();
    if (!start.is_quiet) continue;
    std::vector<Code> from{start.code}, to;
    for (std::size_t i = 0; i < from.size() && from.size() < 64; ++i) {
      for (std::size_t event = 0; event < machine.input_count() && from.size() < 64; ++event) {
        auto const next = machine.after(from[i], event);
        if (next.is_quiet) from.push_back(next.code);
      }
    }
    for (std::size_t event = 0; event < machine.input_count(); ++event) {
      auto const unsettled = machine.after(from, event, to);
      for (std::size_t lane = 0; lane < from.size(); ++lane) {
        auto const alone = machine.after(from[lane], event);
        INFO("seed " << seed << " lane " << lane << " event " << event);
        if ((unsettled >> lane & 1u) == 0) CHECK((alone.is_quiet && alone.code == to[lane]));
      }
    }
  }
}

// Source: taps of shift registers of full length, any book on them (S. W. Golomb, "Shift register
// sequences", 1967): every value but 0 comes once, and then the first again.
TEST_CASE("oscillation: shift registers of full length have a period of 2^n - 1 rounds") {
  for (auto const& [stages, tap] : {std::pair{2, 1},
                                    {3, 2},
                                    {4, 3},
                                    {5, 3},
                                    {6, 5},
                                    {7, 6},
                                    {9, 5},
                                    {10, 7},
                                    {11, 9},
                                    {15, 14},
                                    {17, 14},
                                    {18, 11}}) {
    INFO(stages << " stages");
    for (auto start : {wired::Start::one_on, wired::Start::by_lever}) {
      auto const circuit = wired::shift_register(stages, tap, start);
      Machine const machine(circuit);
      auto const settled =
          start == wired::Start::by_lever ? machine.after(0, 0) : machine.as_built();
      CHECK((!settled.is_quiet && settled.is_known));
      CHECK(settled.oscillation.period == (1 << stages) - 1);
      CHECK(settled.oscillation.loop.size() == static_cast<std::size_t>(stages));
    }
  }
}

TEST_CASE("what neither rests nor repeats within the rounds is not known") {
  auto const circuit = wired::shift_register(39, 35, wired::Start::by_lever);
  Machine const machine(circuit);
  auto const settled = machine.after(0, 0);
  CHECK((!settled.is_quiet && !settled.is_known));
  CHECK(settled.rounds == machine.most_rounds());
  CHECK(settled.oscillation.loop.empty());
  CHECK(machine.after(0, 0, 100).rounds == 100);
}

TEST_CASE("a round more or less decides whether a ripple is seen to rest") {
  auto const circuit = wired::ripple(12);
  Machine const machine(circuit);
  auto code = machine.as_built().code;
  // All ones after 4095 counts, two flips of the clock each: the next count runs through all.
  for (int flip = 0; flip < 2 * 4095; ++flip) code = machine.after(code, 0).code;
  auto const full = machine.after(code, 0);
  REQUIRE(full.is_quiet);
  REQUIRE(full.rounds > 12);
  CHECK(machine.after(code, 0, full.rounds).code == full.code);
  CHECK_FALSE(machine.after(code, 0, full.rounds - 1).is_known);
}
