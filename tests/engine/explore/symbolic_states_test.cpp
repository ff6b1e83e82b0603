#include "engine/explore/symbolic_states.hpp"

#include <cmath>
#include <set>

#include "engine/explore/states.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/counters.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using explore::SymbolicStates;
using Knowledge = SymbolicStates::Knowledge;

namespace {

std::vector<bool> values_of(logic::Code code, std::size_t count) {
  std::vector<bool> values;
  for (std::size_t v = 0; v < count; ++v) values.push_back((code >> v & 1u) != 0);
  return values;
}

// Every assignment of the variables is a state of one search exactly if it is one of the other, and
// the events that never get quiet are the same.
void check_agreement(model::Circuit const& circuit) {
  logic::Machine const machine(circuit);
  auto const numbered = explore::reach(machine);
  SymbolicStates const states(circuit);
  REQUIRE(states.knowledge() == Knowledge::complete);
  REQUIRE(states.variables() == machine.variables());
  REQUIRE(states.is_unquiet_as_built() == numbered.unquiet_as_built.has_value());
  CHECK(states.count() == static_cast<long double>(numbered.size()));
  std::set<logic::Code> const codes(numbered.codes.begin(), numbered.codes.end());
  std::set<std::pair<logic::Code, std::size_t>> unquiet;
  for (auto const& found : numbered.unquiet)
    unquiet.insert({numbered.codes[found.state], found.event});
  auto const variables = states.variables().size();
  bool is_same = true;
  for (logic::Code code = 0; code < logic::Code{1} << variables; ++code) {
    auto const values = values_of(code, variables);
    is_same = is_same && states.contains(values) == (codes.count(code) != 0);
    for (std::size_t event = 0; event < machine.input_count(); ++event)
      is_same = is_same && states.is_unquiet(values, event) == (unquiet.count({code, event}) != 0);
  }
  CHECK(is_same);
}

}  // namespace

TEST_CASE("law: symbolic states are the numbered ones under promises too") {
  int with_fewer_states = 0;
  for (unsigned seed = 0; seed < 600; ++seed) {
    INFO("seed " << seed);
    auto circuit = wired::random_circuit(seed);
    auto const without = explore::reach(logic::Machine(circuit)).size();
    circuit.nevers.push_back(static_cast<model::ExpressionId>(seed % circuit.expressions.size()));
    check_agreement(circuit);
    with_fewer_states += explore::reach(logic::Machine(circuit)).size() < without ? 1 : 0;
  }
  CHECK(with_fewer_states > 100);
}

TEST_CASE("law: symbolic states are the numbered ones, and so is what never gets quiet") {
  int with_oscillation = 0, unquiet_as_built = 0;
  for (unsigned seed = 0; seed < 600; ++seed) {
    INFO("seed " << seed);
    auto const circuit = wired::random_circuit(seed);
    check_agreement(circuit);
    logic::Machine const machine(circuit);
    auto const states = explore::reach(machine);
    with_oscillation += states.unquiet.empty() ? 0 : 1;
    unquiet_as_built += states.unquiet_as_built ? 1 : 0;
  }
  CHECK(with_oscillation > 30);
  CHECK(unquiet_as_built > 5);
}

TEST_CASE("law: the same where wires lie between and all starts are mixed") {
  for (unsigned seed = 0; seed < 300; ++seed) {
    INFO("seed " << seed);
    check_agreement(wired::random_circuit_with_wires(seed));
  }
}

TEST_CASE("law: the same for counters and rings") {
  check_agreement(wired::ripple(9));
  check_agreement(wired::gray_counter(4));
  check_agreement(wired::ring(4));
  check_agreement(wired::twisted_ring(4));
}

// Closed form: a ripple of m toggles has 2^m counts, each with the trigger on and off.
TEST_CASE("a ripple of 64 toggles has 2^65 states, one of 200 has 2^201") {
  for (int toggles : {64, 200}) {
    auto const circuit = wired::ripple(toggles);
    SymbolicStates const states(circuit);
    REQUIRE(states.knowledge() == Knowledge::complete);
    CHECK(states.count() == std::ldexp(1.0L, toggles + 1));
  }
}

// Source: ring and twisted ring (Johnson) counters, any logic databook: n stages count n, or 2n.
TEST_CASE("rings of 40 stages have 40 and 80 counts") {
  for (auto const& [circuit, counts] :
       {std::pair{wired::ring(40), 40}, {wired::twisted_ring(40), 80}}) {
    SymbolicStates const states(circuit);
    REQUIRE(states.knowledge() == Knowledge::complete);
    CHECK(states.count() == 2.0L * counts);
  }
}

TEST_CASE("past the budget of nodes the result says so") {
  auto const circuit = wired::ripple(32);
  SymbolicStates const states(circuit, {500, 4096});
  CHECK(states.knowledge() == Knowledge::out_of_nodes);
  CHECK(states.nodes_made() <= 500);
}

TEST_CASE("past the depth of the diagrams the result says so") {
  for (int count : {100, 300}) {
    auto const circuit = wired::latches(count);
    SymbolicStates const states(circuit, {.deepest = 450});
    CHECK(states.knowledge() == (count == 100 ? Knowledge::complete : Knowledge::out_of_nodes));
  }
  wired::Circuit wide;
  auto const first = wide.of(wide.input());
  for (int i = 0; i < 9000; ++i) wide.input();
  wide.toggle(first);
  CHECK(SymbolicStates(wide.built()).knowledge() == Knowledge::out_of_nodes);
}

// The ripple takes one round a toggle: with fewer rounds nothing is known, and that is no
// oscillation.
TEST_CASE("past the rounds the result says so") {
  auto const circuit = wired::ripple(32);
  SymbolicStates const states(circuit, {std::size_t{1} << 20, 10});
  CHECK(states.knowledge() == Knowledge::out_of_rounds);
  CHECK(states.unquiet_count(0) == 0);
}

TEST_CASE("a loop that never gets quiet is told, with the states it starts from") {
  wired::Circuit loop;
  auto const lever = loop.of(loop.input());
  loop.input();
  auto const delay = loop.delay(lever, 4);
  loop.feed(delay, loop.conjunction(lever, loop.negation(loop.of(delay))));
  SymbolicStates const states(loop.built());
  CHECK(states.count() == 2);
  CHECK(states.unquiet_count(0) == 2);
  CHECK(states.unquiet_count(1) == 0);
}
