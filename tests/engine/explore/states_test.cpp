#include "engine/explore/states.hpp"

#include <map>

#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using explore::States;

namespace {

model::Circuit ripple(int toggles) {
  wired::Circuit circuit;
  auto trigger = circuit.of(circuit.input());
  for (int i = 0; i < toggles; ++i) trigger = circuit.negation(circuit.of(circuit.toggle(trigger)));
  return circuit.built();
}

}  // namespace

// Closed form: m toggles in a ripple reach all 2^m counts, each with the trigger on and off.
TEST_CASE("a ripple of m toggles has 2^m counts") {
  for (int toggles : {1, 3, 8}) {
    auto const circuit = ripple(toggles);
    logic::Machine const machine(circuit);
    auto const states = explore::reach(machine);
    CHECK(states.is_complete);
    CHECK(states.size() == std::size_t{2} << toggles);
    CHECK(explore::without_return(states).empty());
  }
}

TEST_CASE("a latch that nothing resets cannot return") {
  wired::Circuit circuit;
  auto const button = circuit.input(), never = circuit.latch(circuit.of(button), 0);
  auto const set = circuit.of(button);
  circuit.feed(never, set);
  auto built = circuit.built();
  built.signals[never].reset = built.add({model::Operator::constant, 0, 0});
  logic::Machine const machine(built);
  auto const states = explore::reach(machine);
  CHECK(states.size() == 3);
  CHECK(explore::without_return(states).size() == 2);
}

TEST_CASE("past the budget the search says that it is incomplete") {
  auto const circuit = ripple(8);
  logic::Machine const machine(circuit);
  auto const states = explore::reach(machine, 100);
  CHECK_FALSE(states.is_complete);
  CHECK(states.size() == 100);
}

TEST_CASE("law: the states and their distances are those of a plain search") {
  int with_oscillation = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    auto const circuit = wired::random_circuit(seed);
    logic::Machine const machine(circuit);
    auto const start = machine.as_built();
    auto const states = explore::reach(machine);
    INFO("seed " << seed);
    REQUIRE(start.is_quiet == !states.unquiet_as_built);
    if (!start.is_quiet) continue;
    std::map<logic::Code, std::size_t> distance{{start.code, 0}};
    std::vector<logic::Code> queue{start.code};
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (std::size_t event = 0; event < machine.input_count(); ++event) {
        auto const next = machine.after(queue[i], event);
        if (!next.is_quiet) continue;
        if (distance.try_emplace(next.code, distance[queue[i]] + 1).second)
          queue.push_back(next.code);
      }
    }
    REQUIRE(states.codes == queue);
    for (std::uint32_t state = 0; state < states.size(); ++state) {
      CHECK(states.events_to(state).size() == distance[states.codes[state]]);
    }
    with_oscillation += states.unquiet.empty() ? 0 : 1;
  }
  CHECK(with_oscillation > 10);
}
