#include "engine/logic/truth.hpp"

#include <functional>
#include <random>

#include "tests/support/catch.hpp"

using namespace leat;
using model::Operator;

namespace {

// Inputs 0, 1, 2 and what a test adds.
struct Bench {
  model::Circuit circuit;
  std::vector<model::ExpressionId> input;

  Bench() {
    for (model::SignalId s = 0; s < 3; ++s) {
      circuit.signals.push_back({model::SignalKind::lever, s == 1, 0});
      input.push_back(circuit.add({Operator::signal, s, 0}));
    }
  }
  // The rows as bits, row 0 lowest, over all three inputs.
  unsigned rows(model::ExpressionId id) const {
    logic::Truth const truth(circuit, {0, 1, 2});
    unsigned bits = 0;
    for (logic::Row row = 0; row < 8; ++row) bits |= truth.of(id).contains(row) ? 1u << row : 0u;
    return bits;
  }
};

}  // namespace

TEST_CASE("the operators of expressions, on all rows") {
  Bench bench;
  auto& circuit = bench.circuit;
  CHECK(bench.rows(circuit.add({Operator::constant, 0, 0})) == 0x00);
  CHECK(bench.rows(circuit.add({Operator::constant, 1, 0})) == 0xff);
  CHECK(bench.rows(bench.input[0]) == 0xf0);
  CHECK(bench.rows(bench.input[2]) == 0xaa);
  CHECK(bench.rows(circuit.add({Operator::negation, bench.input[0], 0})) == 0x0f);
  CHECK(bench.rows(circuit.add({Operator::conjunction, bench.input[0], bench.input[1]})) == 0xc0);
  CHECK(bench.rows(circuit.add({Operator::disjunction, bench.input[0], bench.input[1]})) == 0xfc);
  CHECK(bench.rows(circuit.add({Operator::parity, bench.input[0], bench.input[1]})) == 0x3c);
}

TEST_CASE("random expressions agree with their evaluation row by row") {
  std::mt19937 dice(5);
  for (int trial = 0; trial < 50; ++trial) {
    Bench bench;
    for (int node = 0; node < 20; ++node) {
      auto const pick = [&] {
        return static_cast<std::uint32_t>(dice() % bench.circuit.expressions.size());
      };
      static constexpr Operator operators[] = {Operator::negation, Operator::conjunction,
                                               Operator::disjunction, Operator::parity};
      bench.circuit.add({operators[dice() % 4], pick(), pick()});
    }
    std::function<bool(model::ExpressionId, logic::Row)> const value = [&](auto id, auto row) {
      auto const& node = bench.circuit.expressions[id];
      if (node.op == Operator::signal) return (row >> (2 - node.left) & 1u) != 0;
      if (node.op == Operator::negation) return !value(node.left, row);
      bool const left = value(node.left, row), right = value(node.right, row);
      return node.op == Operator::conjunction   ? left && right
             : node.op == Operator::disjunction ? left || right
                                                : left != right;
    };
    auto const last = static_cast<model::ExpressionId>(bench.circuit.expressions.size() - 1);
    for (logic::Row row = 0; row < 8; ++row) {
      REQUIRE((bench.rows(last) >> row & 1u) == (value(last, row) ? 1u : 0u));
    }
  }
}

TEST_CASE("wires follow their expressions, also through other wires") {
  Bench bench;
  auto& circuit = bench.circuit;
  auto const both = circuit.add({Operator::conjunction, bench.input[0], bench.input[1]});
  circuit.signals.push_back({model::SignalKind::wire, false, both});
  auto const wire = circuit.add({Operator::signal, 3, 0});
  circuit.signals.push_back(
      {model::SignalKind::wire, false, circuit.add({Operator::negation, wire, 0})});
  circuit.wire_order = {3, 4};
  CHECK(bench.rows(wire) == 0xc0);
  CHECK(bench.rows(circuit.add({Operator::signal, 4, 0})) == 0x3f);
}

TEST_CASE("inputs that are not run stand as built") {
  Bench bench;
  logic::Truth const truth(bench.circuit, {2});
  CHECK(truth.row_count() == 2);
  CHECK(truth.of(bench.input[0]).is_empty());
  CHECK(truth.of(bench.input[1]).is_full());
  CHECK(truth.of(bench.input[2]) == logic::RowSet::where_on(1, 0));
}

TEST_CASE("the row as built, and which inputs a row has on") {
  Bench bench;
  logic::Truth const truth(bench.circuit, {0, 1, 2});
  CHECK(truth.as_built() == 2);
  CHECK_FALSE(truth.is_on(2, 0));
  CHECK(truth.is_on(2, 1));
  CHECK_FALSE(truth.is_on(2, 2));
}

TEST_CASE("a chain of a hundred thousand operands needs no deep stack") {
  Bench bench;
  auto chain = bench.input[0];
  for (int i = 0; i < 100000; ++i) {
    chain = bench.circuit.add({Operator::conjunction, chain, bench.input[1]});
  }
  CHECK(bench.rows(chain) == 0xc0);
}

TEST_CASE("the signals an expression names, through wires") {
  Bench bench;
  auto& circuit = bench.circuit;
  circuit.signals.push_back({model::SignalKind::wire, false, bench.input[2]});
  circuit.wire_order = {3};
  auto const wire = circuit.add({Operator::signal, 3, 0});
  auto const root = circuit.add({Operator::disjunction, bench.input[0], wire});
  CHECK(logic::used_signals(circuit, {root}) == std::vector{true, false, true, true});
  CHECK(logic::used_signals(circuit, {}) == std::vector{false, false, false, false});
}
