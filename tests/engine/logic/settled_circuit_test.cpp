#include "engine/logic/settled_circuit.hpp"

#include <algorithm>
#include <set>

#include "engine/explore/states.hpp"
#include "engine/logic/truth.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/counters.hpp"
#include "tests/support/wired.hpp"

using namespace leat;
using model::SignalId;
using model::SignalKind;
using Signals = std::vector<SignalId>;

namespace {

SignalId add(model::Circuit& circuit, SignalKind kind, model::ExpressionId definition,
             bool starts_on = false) {
  circuit.signals.push_back({kind, starts_on, definition, 0, 5});
  return static_cast<SignalId>(circuit.signals.size() - 1);
}

model::ExpressionId of(model::Circuit& circuit, SignalId signal) {
  return circuit.add({model::Operator::signal, signal, 0});
}

model::ExpressionId either(model::Circuit& circuit, SignalId one, SignalId other) {
  auto const left = of(circuit, one), right = of(circuit, other);
  return circuit.add({model::Operator::disjunction, left, right});
}

// Each wire uses nothing that comes later.
bool is_in_order(model::Circuit const& circuit) {
  std::vector<bool> is_known(circuit.signals.size());
  for (SignalId s = 0; s < circuit.signals.size(); ++s)
    is_known[s] = circuit.signals[s].kind != SignalKind::wire;
  for (auto wire : circuit.wire_order) {
    if (is_known[wire]) return false;
    std::vector<model::ExpressionId> open{circuit.signals[wire].definition};
    while (!open.empty()) {
      auto const node = circuit.expressions[open.back()];
      open.pop_back();
      if (node.op == model::Operator::constant) continue;
      if (node.op == model::Operator::signal) {
        if (!is_known[node.left]) return false;
        continue;
      }
      open.push_back(node.left);
      if (node.op != model::Operator::negation) open.push_back(node.right);
    }
    is_known[wire] = true;
  }
  return std::count(is_known.begin(), is_known.end(), false) == 0;
}

std::size_t count(model::Circuit const& circuit, SignalKind kind) {
  return static_cast<std::size_t>(
      std::count_if(circuit.signals.begin(), circuit.signals.end(),
                    [&](model::Signal const& signal) { return signal.kind == kind; }));
}

}  // namespace

TEST_CASE("delays outside loops are wires once all is settled, behind what they use") {
  // The second delay is fed by a wire of the first, and has the smaller id.
  model::Circuit circuit;
  auto const lever = add(circuit, SignalKind::lever, 0);
  auto const second = add(circuit, SignalKind::delay, 0), wire = add(circuit, SignalKind::wire, 0),
             first = add(circuit, SignalKind::delay, 0);
  circuit.signals[first].definition = of(circuit, lever);
  circuit.signals[wire].definition =
      circuit.add({model::Operator::negation, of(circuit, first), 0});
  circuit.signals[second].definition = of(circuit, wire);
  circuit.wire_order = {wire};
  auto const settled = logic::settled_circuit(circuit);
  CHECK(settled.wire_order == Signals{first, wire, second});
  CHECK(count(settled, SignalKind::wire) == 3);
  CHECK(logic::variables_of(settled) == Signals{lever});
  CHECK(logic::variables_of(circuit) == Signals{lever, second, first});
}

TEST_CASE("a delay behind a latch or a toggle closes no loop with it") {
  model::Circuit circuit;
  auto const lever = add(circuit, SignalKind::lever, 0), latch = add(circuit, SignalKind::latch, 0),
             delay = add(circuit, SignalKind::delay, 0);
  circuit.signals[delay].definition = of(circuit, latch);
  circuit.signals[latch].definition = either(circuit, lever, delay);
  circuit.signals[latch].reset = of(circuit, delay);
  auto const settled = logic::settled_circuit(circuit);
  CHECK(settled.wire_order == Signals{delay});
  CHECK(logic::variables_of(settled) == Signals{lever, latch});
}

TEST_CASE("a loop of delays keeps one that remembers") {
  model::Circuit circuit;
  auto const lever = add(circuit, SignalKind::lever, 0), one = add(circuit, SignalKind::delay, 0),
             other = add(circuit, SignalKind::delay, 0), third = add(circuit, SignalKind::delay, 0),
             itself = add(circuit, SignalKind::delay, 0);
  circuit.signals[one].definition = either(circuit, lever, third);
  circuit.signals[other].definition = of(circuit, one);
  circuit.signals[third].definition = of(circuit, other);
  circuit.signals[itself].definition = either(circuit, lever, itself);
  auto const settled = logic::settled_circuit(circuit);
  CHECK(count(settled, SignalKind::delay) == 2);
  CHECK(settled.signals[itself].kind == SignalKind::delay);
  CHECK(settled.wire_order.size() == 2);
  CHECK(is_in_order(settled));
}

TEST_CASE("two loops that share a delay can be opened by it alone, two apart by one each") {
  model::Circuit circuit;
  auto const lever = add(circuit, SignalKind::lever, 0);
  Signals delays;
  for (int i = 0; i < 4; ++i) delays.push_back(add(circuit, SignalKind::delay, 0));
  circuit.signals[delays[0]].definition = either(circuit, lever, delays[1]);
  circuit.signals[delays[1]].definition = of(circuit, delays[0]);
  circuit.signals[delays[2]].definition = either(circuit, lever, delays[3]);
  circuit.signals[delays[3]].definition = of(circuit, delays[2]);
  auto const settled = logic::settled_circuit(circuit);
  CHECK(count(settled, SignalKind::delay) == 2);
  CHECK(is_in_order(settled));
}

TEST_CASE("wires alone keep their order, lowest first where they are free") {
  model::Circuit circuit;
  auto const lever = add(circuit, SignalKind::lever, 0);
  auto const last = add(circuit, SignalKind::wire, 0), first = add(circuit, SignalKind::wire, 0),
             free = add(circuit, SignalKind::wire, 0);
  circuit.signals[first].definition = of(circuit, lever);
  circuit.signals[last].definition = of(circuit, first);
  circuit.signals[free].definition = of(circuit, lever);
  circuit.wire_order = {free, first, last};
  CHECK(logic::settled_circuit(circuit).wire_order == Signals{first, last, free});
}

TEST_CASE("law: every settled state is a row of the settled circuit, with the same signals") {
  int with_loop = 0;
  for (unsigned seed = 0; seed < 400; ++seed) {
    auto const circuit = wired::random_circuit_with_wires(seed);
    auto const settled = logic::settled_circuit(circuit);
    INFO("seed " << seed);
    REQUIRE(is_in_order(settled));
    with_loop += count(settled, SignalKind::delay) > 0 ? 1 : 0;
    auto const variables = logic::variables_of(settled);
    logic::Truth const truth(settled, variables);
    logic::Machine const machine(circuit);
    auto const states = explore::reach(machine);
    std::set<logic::Row> rows;
    for (auto code : states.codes) {
      auto const values = machine.values(code);
      logic::Row row = 0;
      for (auto variable : variables) row = row << 1 | (values[variable] ? 1u : 0u);
      rows.insert(row);
      for (SignalId s = 0; s < values.size(); ++s)
        REQUIRE(truth.of_signal(s).contains(row) == values[s]);
    }
    REQUIRE(rows.size() == states.size());  // the variables tell the states apart
  }
  CHECK(with_loop > 20);
}

TEST_CASE("holding unused: inputs and memory become what they are as built") {
  model::Circuit circuit;
  auto const used = add(circuit, SignalKind::lever, 0),
             on = add(circuit, SignalKind::lever, 0, true),
             off = add(circuit, SignalKind::button, 0);
  auto const latch = add(circuit, SignalKind::latch, of(circuit, used), true);
  auto const wire = add(circuit, SignalKind::wire, either(circuit, used, on));
  auto const delay = add(circuit, SignalKind::delay, of(circuit, wire));
  circuit.wire_order = {wire};
  std::vector<bool> is_used(circuit.signals.size());
  is_used[used] = true;
  auto const held = logic::holding_unused(circuit, is_used);
  CHECK(logic::variables_of(held) == Signals{used});
  CHECK(is_in_order(held));
  logic::Truth const truth(held, {used});
  CHECK(truth.of_signal(on).is_full());
  CHECK(truth.of_signal(off).is_empty());
  CHECK(truth.of_signal(latch).is_full());
  CHECK(truth.of_signal(delay).is_empty());
  CHECK(truth.of_signal(wire).is_full());  // a wire stays, and sees what is held
}

TEST_CASE("holding unused: what is used stays as it was, memory and all") {
  model::Circuit circuit;
  auto const lever = add(circuit, SignalKind::lever, 0);
  auto const toggle = add(circuit, SignalKind::toggle, of(circuit, lever));
  auto const idle = add(circuit, SignalKind::toggle, of(circuit, lever));
  auto const held = logic::holding_unused(circuit, {true, true, false});
  CHECK(logic::variables_of(held) == Signals{lever, toggle});
  logic::Machine const machine(held);
  auto const after = machine.after(machine.as_built().code, 0);
  CHECK(machine.values(after.code)[toggle]);
  CHECK_FALSE(machine.values(after.code)[idle]);
}

TEST_CASE("variables: inputs, then memory, each by number") {
  model::Circuit circuit;
  auto const latch = add(circuit, SignalKind::latch, 0), lever = add(circuit, SignalKind::lever, 0),
             wire = add(circuit, SignalKind::wire, 0), delay = add(circuit, SignalKind::delay, 0),
             plate = add(circuit, SignalKind::plate, 0),
             toggle = add(circuit, SignalKind::toggle, 0);
  circuit.wire_order = {wire};
  CHECK(logic::variables_of(circuit) == Signals{lever, plate, latch, delay, toggle});
}
