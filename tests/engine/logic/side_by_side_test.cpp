#include "engine/logic/side_by_side.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/counters.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using namespace leat::logic;

namespace {

// Settled states that can be reached, at most as many as a block holds.
std::vector<Code> some_states(Machine const& machine) {
  auto const start = machine.as_built();
  if (!start.is_quiet) return {};
  std::vector<Code> states{start.code};
  for (std::size_t i = 0; i < states.size(); ++i) {
    for (std::size_t event = 0; event < machine.input_count(); ++event) {
      auto const next = machine.after(states[i], event);
      bool const is_known = std::find(states.begin(), states.end(), next.code) != states.end();
      if (next.is_quiet && !is_known && states.size() < SideBySide::most_states)
        states.push_back(next.code);
    }
  }
  return states;
}

// After each event every lane is what a machine alone comes to, unless it is said to be unsettled.
// The events come twice over, so that one leaves nothing behind for the next.
std::size_t check_lanes(model::Circuit const& circuit) {
  Machine const machine(circuit);
  auto const states = some_states(machine);
  SideBySide block(machine);
  block.load(states);
  std::size_t unsettled_count = 0;
  bool is_same = true;
  for (std::size_t i = 0; i < 2 * machine.input_count(); ++i) {
    auto const event = i % machine.input_count();
    auto const& outcome = block.flip(event);
    for (std::size_t lane = 0; lane < states.size(); ++lane) {
      auto const is_on = [&](auto const& plane) {
        return (plane[lane / 64] >> lane % 64 & 1u) != 0;
      };
      auto const alone = machine.after(states[lane], event);
      unsettled_count += is_on(outcome.unsettled) ? 1u : 0u;
      if (is_on(outcome.unsettled)) continue;
      auto code = states[lane] ^ Code { 1 } << event;
      for (auto const& change : outcome.changes)
        code ^= Code{is_on(change.lanes)} << change.variable;
      is_same = is_same && alone.is_quiet && code == alone.code;
    }
  }
  CHECK(is_same);
  return unsettled_count;
}

}  // namespace

TEST_CASE("law: what a slice of the circuit changes is what a whole machine changes") {
  std::size_t unsettled = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    INFO("seed " << seed);
    unsettled += check_lanes(wired::random_circuit(seed));
    unsettled += check_lanes(wired::random_circuit_with_wires(seed));
  }
  CHECK(unsettled > 0);
  CHECK(check_lanes(wired::ripple(8)) == 0);
  CHECK(check_lanes(wired::gray_counter(6)) == 0);
  CHECK(check_lanes(wired::twisted_ring(20)) == 0);
}

TEST_CASE("events touch where both bear on one memory element, not where both feed a wire only") {
  wired::Circuit wires;
  auto const a = wires.input(), b = wires.input(), c = wires.input();
  auto const both = wires.conjunction(wires.of(a), wires.of(b));
  wires.latch(wires.of(a), wires.negation(wires.of(c)));
  auto circuit = wires.built();
  circuit.signals.push_back({model::SignalKind::wire, false, both, 0, 0});
  circuit.wire_order.push_back(static_cast<model::SignalId>(circuit.signals.size() - 1));
  Machine const machine(circuit);
  SideBySide const block(machine);
  CHECK(block.event_count() == 3);
  CHECK(block.do_touch(0, 2));
  CHECK(block.do_touch(2, 0));
  CHECK(block.do_touch(1, 1));
  CHECK_FALSE(block.do_touch(0, 1));
  CHECK_FALSE(block.do_touch(1, 2));
}

TEST_CASE("more states than lanes break the contract") {
  auto const circuit = wired::ripple(2);
  Machine const machine(circuit);
  SideBySide block(machine);
  CHECK_THROWS_AS(block.load(std::vector<Code>(SideBySide::most_states + 1)), ContractBroken);
}
