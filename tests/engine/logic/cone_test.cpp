#include "engine/logic/cone.hpp"

#include "engine/logic/truth.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;

TEST_CASE("cone: what an expression follows from, and nothing else, numbered as it is met") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input(), c = whole.input();
  auto const latch = whole.latch(whole.of(c), whole.of(a));
  auto const root = whole.conjunction(whole.of(latch), whole.negation(whole.of(c)));
  auto const circuit = whole.built();
  logic::Cones cones(circuit);
  auto const cone = cones.of({root});
  CHECK(cone.signals == std::vector<model::SignalId>{latch, c, a});
  CHECK(cone.circuit.signals[0].kind == model::SignalKind::latch);
  CHECK(std::find(cone.signals.begin(), cone.signals.end(), b) == cone.signals.end());
  for (int row = 0; row < 8; ++row) {
    std::vector<bool> in_whole(circuit.signals.size(), false), own;
    in_whole[latch] = (row & 1) != 0, in_whole[c] = (row & 2) != 0, in_whole[a] = (row & 4) != 0;
    for (auto signal : cone.signals) own.push_back(in_whole[signal]);
    CHECK(logic::is_true(cone.circuit, cone.roots[0], own) ==
          logic::is_true(circuit, root, in_whole));
  }
}

TEST_CASE("cone: circuits of one form have equal cones but for their signals") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input(), c = whole.input(), d = whole.input();
  auto const one = whole.conjunction(whole.of(a), whole.negation(whole.of(b)));
  auto const other = whole.conjunction(whole.of(d), whole.negation(whole.of(c)));
  auto const circuit = whole.built();
  logic::Cones cones(circuit);
  auto const first = cones.of({one}), second = cones.of({other});
  CHECK(first.circuit.expressions == second.circuit.expressions);
  CHECK(first.signals == std::vector<model::SignalId>{a, b});
  CHECK(second.signals == std::vector<model::SignalId>{d, c});
}

TEST_CASE("cone: promises about its own signals alone come along") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input();
  auto const of_a = whole.of(a), both = whole.conjunction(of_a, whole.of(b));
  auto circuit = whole.built();
  circuit.nevers = {of_a, both};
  logic::Cones cones(circuit);
  CHECK(cones.of({of_a}).circuit.nevers.size() == 1);
  CHECK(cones.of({both}).circuit.nevers.size() == 2);
}
