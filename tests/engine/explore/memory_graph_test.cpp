#include "engine/explore/memory_graph.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using explore::MemoryChange;
using explore::MemoryGraph;

namespace {

struct Explored {
  explicit Explored(model::Circuit circuit_)
      : circuit(std::move(circuit_)),
        machine(circuit),
        states(explore::reach(machine)),
        graph(explore::memory_graph(machine, states, explore::memory_of(machine))),
        changes(explore::memory_changes(states, graph)) {}
  Explored(Explored const&) = delete;

  model::Circuit circuit;
  logic::Machine machine;
  explore::States states;
  MemoryGraph graph;
  std::vector<MemoryChange> changes;
};

bool has(std::vector<MemoryChange> const& changes, MemoryChange const& wanted) {
  for (auto const& change : changes) {
    if (change.from == wanted.from && change.to == wanted.to && change.event == wanted.event &&
        change.is_on == wanted.is_on)
      return change.is_always == wanted.is_always;
  }
  return false;
}

}  // namespace

TEST_CASE("a latch has two values, and each change its event") {
  wired::Circuit circuit;
  auto const set = circuit.input(), reset = circuit.input();
  circuit.latch(circuit.of(set), circuit.of(reset));
  Explored const latch(circuit.built());
  REQUIRE(latch.graph.values.size() == 2);
  CHECK(latch.states.size() == 5);
  CHECK(latch.graph.values[0].memory == 0);
  CHECK(latch.graph.values[0].states == 2);  // set off, reset either way
  CHECK(latch.graph.values[1].memory == 1);
  CHECK(latch.graph.values[1].states == 3);  // all but set off, reset on
  CHECK(latch.states.events_to(latch.graph.values[1].nearest) == std::vector<std::size_t>{0});
  REQUIRE(latch.changes.size() == 3);
  CHECK(has(latch.changes, {0, 1, 0, true, true}));
  // Set off lets it go only while reset is on; reset only while set is off.
  CHECK(has(latch.changes, {1, 0, 0, false, false}));
  CHECK(has(latch.changes, {1, 0, 1, true, false}));
  CHECK(logic::RowSet(1) == explore::never_reached(latch.graph, 1));
}

TEST_CASE("values that no state has") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  circuit.toggle(circuit.of(lever));
  circuit.toggle(circuit.of(lever));
  circuit.latch(circuit.conjunction(circuit.of(1), circuit.negation(circuit.of(2))), 0);
  Explored const pair(circuit.built());
  auto const never = explore::never_reached(pair.graph, 3);
  // The toggles agree, and the latch stays off: rows 000 and 110 are all.
  CHECK(pair.graph.values.size() == 2);
  CHECK(never.count() == 6);
  CHECK_FALSE(never.contains(0b000));
  CHECK_FALSE(never.contains(0b110));
}

TEST_CASE("events that do not get quiet are kept by kind, the nearest first") {
  wired::Circuit circuit;
  auto const lever = circuit.input();
  circuit.input();
  auto const itself = circuit.of(2);
  circuit.latch(circuit.conjunction(circuit.of(lever), circuit.negation(itself)), itself);
  Explored const restless(circuit.built());
  REQUIRE(restless.graph.restless.size() == 1);
  auto const& kind = restless.graph.restless.front();
  CHECK(kind.event == 0);
  CHECK(kind.is_on);
  CHECK(kind.count == 2);  // the other lever either way
  CHECK(kind.state == 0);
  CHECK(kind.oscillation.loop == std::vector<model::SignalId>{2});
  REQUIRE(restless.changes.size() == 1);
  CHECK(has(restless.changes, {0, explore::States::none, 0, true, true}));
}

TEST_CASE("a circuit without memory has one value and no change") {
  wired::Circuit circuit;
  circuit.input();
  circuit.input();
  Explored const plain(circuit.built());
  CHECK(plain.graph.values.size() == 1);
  CHECK(plain.graph.values.front().states == 4);
  CHECK(plain.changes.empty());
}

TEST_CASE("what has a say in the memory: its elements and all that they look at") {
  wired::Circuit circuit;
  auto const a = circuit.input(), b = circuit.input(), idle = circuit.input(), c = circuit.input();
  auto const toggle = circuit.toggle(circuit.conjunction(circuit.of(a), circuit.of(b)));
  auto const latch = circuit.latch(circuit.of(toggle), circuit.negation(circuit.of(c)));
  auto const behind = explore::behind_memory(circuit.built());
  for (auto s : {a, b, c, toggle, latch}) CHECK(behind[s]);
  CHECK_FALSE(behind[idle]);
}

TEST_CASE("values, states and changes of any circuit are those of its transitions") {
  int compared = 0;
  for (unsigned seed = 0; seed < 150; ++seed) {
    auto const circuit = wired::random_circuit(seed);
    logic::Machine const machine(circuit);
    auto const states = explore::reach(machine);
    if (states.unquiet_as_built) continue;
    ++compared;
    auto const graph = explore::memory_graph(machine, states, explore::memory_of(machine));
    auto const changes = explore::memory_changes(states, graph);
    std::size_t counted = 0;
    for (auto const& value : graph.values) counted += value.states;
    CHECK(counted == states.size());
    for (std::uint32_t state = 0; state < states.size(); ++state) {
      auto const from = graph.value_of[state];
      CHECK(graph.values[from].memory == states.codes[state] >> machine.input_count());
      CHECK(graph.values[from].nearest <= state);
      CHECK(graph.values[from].events == states.events_to(graph.values[from].nearest).size());
      for (std::uint32_t event = 0; event < states.events; ++event) {
        bool const is_on = (states.codes[state] >> event & 1u) == 0;
        auto const next = states.after(state, event);
        auto const to = next == explore::States::none ? next : graph.value_of[next];
        for (auto const& change : changes) {
          if (change.from != from || change.event != event || change.is_on != is_on) continue;
          if (change.is_always) CHECK(change.to == to);
        }
        if (to != from)
          CHECK((has(changes, {from, to, event, is_on, true}) ||
                 has(changes, {from, to, event, is_on, false})));
      }
    }
  }
  CHECK(compared > 75);
}
