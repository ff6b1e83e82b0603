#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

TEST_CASE("twin signals: signals that always agree, each group once") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  for (int copies = 0; copies < 2; ++copies) {
    design.circuit.signals.push_back({model::SignalKind::wire, false, 0});
  }
  design.circuit.wire_order = {2, 3};
  auto const judgement = judge(design);
  CHECK(only(judgement, FindingKind::twin_signals).signals ==
        std::vector<model::SignalId>{0, 2, 3});
}

TEST_CASE("no twin signals: others, opposites, and those that never change") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const opposite = design.circuit.add({model::Operator::negation, 0, 0});
  auto const never = design.circuit.add({model::Operator::constant, 0, 0});
  for (auto definition : {opposite, never, never}) {
    design.circuit.signals.push_back({model::SignalKind::wire, false, definition});
  }
  design.circuit.wire_order = {2, 3, 4};
  CHECK_FALSE(has(judge(design), FindingKind::twin_signals));
}

TEST_CASE("no twin signals: delays agree with what goes into them by their nature") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  add(design, {model::SignalKind::delay, false, 0, 0, 10});
  CHECK_FALSE(has(judge(design), FindingKind::twin_signals));
  add(design, {model::SignalKind::wire, false, 0, 0, 0});
  auto const judgement = judge(design);
  CHECK(only(judgement, FindingKind::twin_signals).signals == std::vector<model::SignalId>{0, 3});
}

TEST_CASE("no twin signals: a wire that looks at a delay takes time to follow as well") {
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const later = add(design, {model::SignalKind::delay, false, 0, 0, 10});
  auto const either = design.circuit.add({model::Operator::disjunction, 0, later});
  add(design, {model::SignalKind::wire, false, either, 0, 0});
  CHECK_FALSE(has(judge(design), FindingKind::twin_signals));
}

TEST_CASE("twin signals: memory too, as far as combinations are reached") {
  // Latch 2 follows lever 0; latch 3 can be on without it.
  auto design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const off = design.circuit.add({model::Operator::negation, 0, 0});
  add(design, {model::SignalKind::latch, false, 0, off, 0});
  add(design, {model::SignalKind::latch, false, 0, 1, 0});
  auto const judgement = judge(design);
  auto const& twins = only(judgement, FindingKind::twin_signals);
  CHECK(twins.signals == std::vector<model::SignalId>{0, 2});
  CHECK(twins.rows == judgement.combinations.reachable);
  CHECK_FALSE(twins.rows.is_full());
}
