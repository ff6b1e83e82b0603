#include "engine/explore/states.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "engine/explore/symbolic_states.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/counters.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using explore::States;

namespace {

std::size_t count_of(model::Circuit const& circuit) {
  logic::Machine const machine(circuit);
  auto const states = explore::reach(machine);
  CHECK(states.is_complete);
  CHECK(states.unquiet.empty());
  return states.size();
}

// The states one by one: a queue, each event of each state in turn.
struct PlainSearch {
  explicit PlainSearch(logic::Machine const& machine) {
    auto const start = machine.as_built();
    if (!start.is_quiet) return;
    distance[start.code] = 0;
    queue.push_back(start.code);
    for (std::size_t i = 0; i < queue.size(); ++i) {
      for (std::size_t event = 0; event < machine.input_count(); ++event) {
        auto const next = machine.after(queue[i], event);
        after.push_back(next.is_quiet ? std::optional(next.code) : std::nullopt);
        if (!next.is_quiet) continue;
        if (distance.try_emplace(next.code, distance[queue[i]] + 1).second)
          queue.push_back(next.code);
      }
    }
  }
  std::map<logic::Code, std::size_t> distance;
  std::vector<logic::Code> queue;
  std::vector<std::optional<logic::Code>> after;  // state * events + event
};

bool is_prefix(std::vector<logic::Code> const& codes, std::vector<logic::Code> const& whole,
               std::size_t count) {
  return codes.size() == count && std::equal(codes.begin(), codes.end(), whole.begin());
}

// The same states in the same order, as far from as built, with the same successors, tabled or not;
// the first of them where the budget ends the search. Returns how many of them an event leaves
// without quiet.
std::size_t check_against_plain_search(model::Circuit const& circuit) {
  logic::Machine const machine(circuit);
  PlainSearch const plain(machine);
  auto const states = explore::reach(machine);
  auto const without = explore::reach(machine, 1 << 20, explore::Successors::left_out);
  REQUIRE(states.unquiet_as_built.has_value() == plain.queue.empty());
  REQUIRE(states.codes == plain.queue);
  REQUIRE(without.codes == plain.queue);
  CHECK(without.parent == states.parent);
  CHECK(without.next.empty());
  auto const most = 1 + plain.queue.size() / 2;
  if (!plain.queue.empty())
    CHECK(is_prefix(explore::reach(machine, most).codes, plain.queue, most));
  bool is_same = states.next.size() == plain.after.size();
  std::size_t unquiet = 0;
  for (std::uint32_t state = 0; state < states.size(); ++state) {
    is_same = is_same && states.events_to(state).size() == plain.distance.at(states.codes[state]);
    for (std::size_t event = 0; event < states.events; ++event) {
      auto const to = states.after(state, event);
      auto const expected = plain.after[state * states.events + event];
      is_same = is_same && (to == States::none ? !expected : expected == states.codes[to]);
      if (expected) continue;
      is_same = is_same && unquiet < states.unquiet.size() &&
                states.unquiet[unquiet].state == state && states.unquiet[unquiet].event == event;
      ++unquiet;
    }
  }
  CHECK(is_same);
  CHECK(unquiet == states.unquiet.size());
  CHECK(unquiet == without.unquiet.size());
  return unquiet;
}

}  // namespace

TEST_CASE("states: events into what never comes about are not done") {
  wired::Circuit wires;
  auto const a = wires.input(), b = wires.input();
  auto const both = wires.conjunction(wires.of(a), wires.of(b));
  auto circuit = wires.built();
  circuit.nevers.push_back(both);
  auto const states = explore::reach(logic::Machine(circuit));
  CHECK(states.size() == 3);
  CHECK(states.after(1, 1) == explore::States::none);
  CHECK(states.after(1, 0) == 0);
  CHECK(explore::without_return(states).empty());
}

TEST_CASE("states: as built is there though it is promised away, and no event leads back to it") {
  wired::Circuit wires;
  auto const a = wires.input(), b = wires.input();
  wires.input();
  auto const promised = wires.of(a);
  auto circuit = wires.built();
  circuit.signals[a].starts_on = true;
  circuit.nevers.push_back(promised);
  auto const states = explore::reach(logic::Machine(circuit));
  REQUIRE(states.size() == 5);
  CHECK(states.after(0, a) == 1);
  CHECK(states.after(0, b) == explore::States::none);
  CHECK(states.after(1, a) == explore::States::none);
  CHECK(explore::without_return(states).size() == 4);
  explore::SymbolicStates const set(circuit);
  CHECK(set.count() == 5);
  auto const& diagram = set.diagram();
  CHECK(diagram.share(set.done_from(a)) * 8 == 1);
  CHECK(diagram.share(set.done_from(b)) * 8 == 4);
}

// Closed form: m toggles in a ripple reach all 2^m counts, each with the trigger on and off.
TEST_CASE("a ripple of m toggles has 2^m counts") {
  for (int toggles : {1, 3, 8}) {
    auto const circuit = wired::ripple(toggles);
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
  auto const circuit = wired::ripple(8);
  logic::Machine const machine(circuit);
  auto const states = explore::reach(machine, 100);
  CHECK_FALSE(states.is_complete);
  CHECK(states.size() == 100);
}

// Source: ring counter and twisted ring (Johnson) counter, any logic databook: n stages count n, or
// 2n; each count with the clock off and on.
TEST_CASE("a ring of n stages has n counts, a twisted one 2n") {
  for (int stages : {2, 3, 5, 12, 30}) {
    CHECK(count_of(wired::ring(stages)) == 2u * static_cast<unsigned>(stages));
    CHECK(count_of(wired::twisted_ring(stages)) == 4u * static_cast<unsigned>(stages));
  }
}

// Source: F. Gray, US patent 2632058: n bits count 2^n, and one bit changes a step. The n-th count
// is n xor n / 2.
TEST_CASE("a Gray counter of n bits has 2^n counts and changes one bit a step") {
  for (int bits : {2, 3, 6}) {
    auto const circuit = wired::gray_counter(bits);
    CHECK(count_of(circuit) == std::size_t{2} << bits);
    logic::Machine const machine(circuit);
    auto const all = (logic::Code{1} << bits) - 1;
    auto code = machine.as_built().code;
    for (logic::Code count = 0; count <= all + 1; ++count) {
      CHECK((code >> 1 & all) == ((count ^ count >> 1) & all & (count > all ? 0 : all)));
      code = machine.after(machine.after(code, 0).code, 0).code;
    }
  }
}

TEST_CASE("law: the states and their distances are those of a plain search") {
  int with_oscillation = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    INFO("seed " << seed);
    with_oscillation += check_against_plain_search(wired::random_circuit(seed)) != 0 ? 1 : 0;
    with_oscillation +=
        check_against_plain_search(wired::random_circuit_with_wires(seed)) != 0 ? 1 : 0;
  }
  CHECK(with_oscillation > 20);
}

// Events of different parts come in either order: what is left out of the search must be known.
TEST_CASE("law: the same where a machine has parts that do not touch each other") {
  std::size_t with_oscillation = 0;
  for (unsigned seed = 0; seed < 300; ++seed) {
    INFO("seed " << seed);
    auto circuit = wired::random_circuit(3 * seed);
    circuit = wired::beside(std::move(circuit), wired::random_circuit_with_wires(3 * seed + 1));
    if (seed % 2 == 0)
      circuit = wired::beside(std::move(circuit), wired::random_circuit(3 * seed + 2));
    with_oscillation += check_against_plain_search(circuit) != 0 ? 1u : 0u;
  }
  CHECK(with_oscillation > 20);
}

// Many blocks, many lanes, and codes that no parity makes dense: latches that need two levers.
TEST_CASE("law: the same for machines of thousands of states") {
  check_against_plain_search(wired::latches_of_pairs(7));
  check_against_plain_search(wired::latches(12));
  check_against_plain_search(wired::gray_counter(9));
  check_against_plain_search(wired::latch_of_all(11));
}

TEST_CASE("where an event neither rests nor repeats the search ends, and says after which") {
  auto circuit =
      wired::beside(wired::latches(2), wired::shift_register(39, 35, wired::Start::by_lever));
  for (bool is_promised : {false, true}) {
    if (is_promised) circuit.nevers.push_back(0);
    logic::Machine const machine(circuit);
    auto const states = explore::reach(machine);
    CHECK_FALSE(states.is_complete);
    CHECK(states.unquiet.empty());
    REQUIRE(states.unended);
    CHECK(circuit.signals[*states.unended->input].is_input());
    CHECK(machine.variables()[2] == states.unended->input);
    CHECK(states.unended->rounds == machine.most_rounds());
  }
  auto const restless = wired::shift_register(39, 35);
  auto const states = explore::reach(logic::Machine(restless));
  CHECK(states.size() == 0);
  CHECK_FALSE(states.unquiet_as_built);
  REQUIRE(states.unended);
  CHECK_FALSE(states.unended->input);
}

// An oscillation of 2^18 - 1 rounds takes twice as many to be seen: from 8 states they add up to
// what is allowed for all.
TEST_CASE("rounds of all states together are bounded") {
  auto const slow = wired::shift_register(18, 11, wired::Start::by_lever);
  for (int levers : {1, 4}) {
    auto const circuit = wired::beside(wired::latches(levers), slow);
    logic::Machine const machine(circuit);
    auto const states = explore::reach(machine);
    CHECK(states.is_complete == (levers == 1));
    CHECK(states.unquiet.size() == (levers == 1 ? 2u : 8u));
    if (levers == 4) CHECK(states.unended->rounds == 4 * machine.most_rounds());
  }
}
