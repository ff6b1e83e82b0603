#include "engine/compare/ground.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using logic::Diagram;
using model::SignalId;

namespace {

// Lever 0 sets and lever 1 resets what signal 2 remembers; the gate hangs on it.
model::Design remembering(model::SignalKind kind, bool sets_by_first = true) {
  auto design = drawn::draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto& circuit = design.circuit;
  auto const first = circuit.add({model::Operator::signal, 0, 0});
  auto const second = circuit.add({model::Operator::signal, 1, 0});
  model::Signal memory;
  memory.kind = kind;
  memory.definition = sets_by_first ? first : second;
  memory.reset = sets_by_first ? second : first;
  circuit.signals.push_back(memory);
  auto const on = circuit.add({model::Operator::signal, 2, 0});
  for (auto& fill : design.fills) {
    if (fill.control) fill.control = on;
  }
  return design;
}

// The same, told in other words: set by the first lever and itself.
model::Design in_other_words() {
  auto design = remembering(model::SignalKind::latch);
  auto& circuit = design.circuit;
  auto& memory = circuit.signals[2];
  memory.definition =
      circuit.add({model::Operator::conjunction, memory.definition, memory.definition});
  return design;
}

std::vector<SignalId> const variables{0, 1, 2};
compare::Counterparts<SignalId> const same{0, 1, 2};

}  // namespace

TEST_CASE("ground: inputs are shared, and memory that starts and follows alike") {
  auto const design = remembering(model::SignalKind::latch);
  auto const joint = compare::joined(design.circuit, design.circuit, same);
  CHECK(joint.circuit.signals.size() == 3);
  CHECK(joint.before == joint.after);
}

TEST_CASE("ground: memory that follows otherwise, or starts so, stays apart") {
  auto const design = remembering(model::SignalKind::latch);
  auto on = design;
  on.circuit.signals[2].starts_on = true;
  for (auto const& after : {in_other_words(), remembering(model::SignalKind::latch, false),
                            remembering(model::SignalKind::toggle), on}) {
    auto const joint = compare::joined(design.circuit, after.circuit, same);
    CHECK(joint.circuit.signals.size() == 4);
    CHECK(joint.before == std::vector<SignalId>{0, 1, 3});
    CHECK(joint.after == std::vector<SignalId>{0, 1, 2});
  }
}

TEST_CASE("ground: memory that follows from memory that stays apart does, too") {
  auto const with_second = [](model::Design design) {
    auto& circuit = design.circuit;
    model::Signal second;
    second.kind = model::SignalKind::toggle;
    second.definition = circuit.add({model::Operator::signal, 2, 0});
    circuit.signals.push_back(second);
    return design.circuit;
  };
  compare::Counterparts<SignalId> const all{0, 1, 2, 3};
  auto const before = with_second(remembering(model::SignalKind::latch));
  CHECK(compare::joined(before, before, all).circuit.signals.size() == 4);
  auto const after = with_second(remembering(model::SignalKind::latch, false));
  CHECK(compare::joined(before, after, all).circuit.signals.size() == 6);
}

TEST_CASE("ground: memory that always agrees is counted once") {
  auto const design = remembering(model::SignalKind::latch), other = in_other_words();
  compare::Ground ground({design, variables}, {other, variables}, same, 1 << 16);
  CHECK(ground.conditions().variables().size() == 4);
  CHECK(ground.variable_count() == 3);
  // A latch can hold either value with both levers off, and not off while only the first is on.
  CHECK(ground.diagram().share(ground.reachable()) * 8 == 5);
  CHECK(ground.is_whole());
}

TEST_CASE("ground: machines that differ are led apart by a shortest way") {
  auto const latch = remembering(model::SignalKind::latch);
  auto const turned = remembering(model::SignalKind::latch, false);
  compare::Ground ground({latch, variables}, {turned, variables}, same, 1 << 16);
  CHECK(ground.variable_count() == 4);
  auto const differ = ground.diagram().differ(ground.conditions().of_signal(ground.before()[2]),
                                              ground.conditions().of_signal(ground.after()[2]));
  auto const example =
      ground.nearest(ground.diagram().both(differ, ground.conditions().reachable()));
  REQUIRE(example);
  REQUIRE(example->flips);
  CHECK(example->flips->size() == 1);
}

TEST_CASE("ground: a design by itself has its own signals as the joint ones") {
  auto const design = remembering(model::SignalKind::toggle);
  compare::Ground ground({design, variables}, 1 << 16);
  CHECK(ground.after() == std::vector<SignalId>{0, 1, 2});
  CHECK(ground.conditions().variables() == variables);
  CHECK(ground.counts(2));
}
