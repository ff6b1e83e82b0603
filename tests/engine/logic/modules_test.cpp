#include "engine/logic/modules.hpp"

#include <algorithm>
#include <random>
#include <set>

#include "engine/logic/truth.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/wired.hpp"

using namespace leat;

namespace {

std::vector<model::SignalId> wires(model::Circuit const& circuit,
                                   std::vector<model::ExpressionId> const& roots) {
  std::vector<model::SignalId> found;
  for (auto const& lever : logic::modules(logic::Cones(circuit).of(roots)))
    found.push_back(lever.signal);
  std::sort(found.begin(), found.end());
  return found;
}

using Wires = std::vector<model::SignalId>;

}  // namespace

TEST_CASE("modules: a wire through which alone its levers are used stands for them") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input(), c = whole.input();
  auto const wire = whole.wire(whole.conjunction(whole.of(a), whole.negation(whole.of(b))));
  auto const gate = whole.of(wire), contrary = whole.negation(whole.of(wire));
  auto const with_other = whole.conjunction(whole.of(wire), whole.of(c));
  CHECK(wires(whole.built(), {gate, contrary, with_other}) == Wires{wire});
  CHECK(wires(whole.built(), {gate, whole.of(a)}).empty());
  CHECK(wires(whole.built(), {gate, whole.of(b)}).empty());
}

TEST_CASE("modules: a wire of one lever, or of none, stands for nothing") {
  wired::Circuit whole;
  auto const a = whole.input();
  auto const wire = whole.wire(whole.negation(whole.of(a)));
  CHECK(wires(whole.built(), {whole.of(wire)}).empty());
}

TEST_CASE("modules: whatever is no lever stays as it is") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input();
  auto const button = whole.input(model::SignalKind::button, 20);
  auto const latch = whole.latch(whole.of(a), whole.of(button));
  auto const by_button = whole.wire(whole.conjunction(whole.of(b), whole.of(button)));
  auto const by_memory = whole.wire(whole.conjunction(whole.of(b), whole.of(latch)));
  CHECK(wires(whole.built(), {whole.of(by_button)}).empty());
  CHECK(wires(whole.built(), {whole.of(by_memory)}).empty());
}

TEST_CASE("modules: what sets a latch uses its levers, too") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input(), c = whole.input(), d = whole.input();
  auto const wire = whole.wire(whole.conjunction(whole.of(a), whole.of(b)));
  auto const through_it = whole.latch(whole.of(wire), whole.of(c));
  auto const beside_it = whole.latch(whole.of(a), whole.of(d));
  CHECK(wires(whole.built(), {whole.of(wire), whole.of(through_it)}) == Wires{wire});
  CHECK(wires(whole.built(), {whole.of(wire), whole.of(beside_it)}).empty());
}

TEST_CASE("modules: what is promised never to come about of its levers keeps them") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input();
  auto const wire = whole.wire(whole.combined(model::Operator::parity, whole.of(a), whole.of(b)));
  auto const gate = whole.of(wire), both = whole.conjunction(whole.of(a), whole.of(b));
  auto circuit = whole.built();
  CHECK(wires(circuit, {gate}) == Wires{wire});
  circuit.nevers = {both};
  CHECK(wires(circuit, {gate}).empty());
}

TEST_CASE("modules: a wire that never changes is no lever") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input();
  auto const and_b = whole.conjunction(whole.of(a), whole.of(b));
  auto const never = whole.wire(whole.conjunction(and_b, whole.negation(whole.of(a))));
  auto const always = whole.wire(
      whole.combined(model::Operator::disjunction, and_b, whole.negation(whole.of(never))));
  auto const sometimes =
      whole.wire(whole.combined(model::Operator::disjunction, and_b, whole.negation(whole.of(a))));
  CHECK(wires(whole.built(), {whole.of(never)}).empty());
  CHECK(wires(whole.built(), {whole.of(always)}).empty());
  CHECK(wires(whole.built(), {whole.of(sometimes)}) == Wires{sometimes});
}

TEST_CASE("modules: as built a wire is what its levers make it") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input();
  auto const gate = whole.of(
      whole.wire(whole.conjunction(whole.negation(whole.of(a)), whole.negation(whole.of(b)))));
  auto circuit = whole.built();
  CHECK(logic::modules(logic::Cones(circuit).of({gate})).front().starts_on);
  circuit.signals[b].starts_on = true;
  CHECK_FALSE(logic::modules(logic::Cones(circuit).of({gate})).front().starts_on);
}

TEST_CASE("modules: a cone in which they are levers follows from them alone") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input(), c = whole.input();
  auto const wire = whole.wire(whole.conjunction(whole.of(a), whole.of(b)));
  auto const root = whole.conjunction(whole.of(wire), whole.of(c));
  logic::Cones cones(whole.built());
  auto const levers = logic::modules(cones.of({root}));
  auto const cone = cones.of({root}, levers);
  CHECK(cone.signals == std::vector<model::SignalId>{wire, c});
  CHECK(cone.circuit.signals[0].kind == model::SignalKind::lever);
  CHECK(cone.circuit.wire_order.empty());
}

namespace {

// The definition, asked of every wire by itself: all ways from the roots to its levers lead through
// it, and running all their values shows it on and off.
class Definition {
 public:
  Definition(model::Circuit const& circuit, std::vector<model::ExpressionId> const& roots)
      : circuit_(circuit), roots_(roots) {}

  Wires topmost() const {
    std::set<model::SignalId> all, inner;
    for (auto wire : met_without({})) {
      if (circuit_.signals[wire].kind == model::SignalKind::wire && is_module(wire))
        all.insert(wire);
    }
    for (auto wire : all) {
      for (auto below : met_from({circuit_.signals[wire].definition}, {})) inner.insert(below);
    }
    Wires found;
    std::set_difference(all.begin(), all.end(), inner.begin(), inner.end(),
                        std::back_inserter(found));
    return found;
  }

 private:
  using Signals = std::set<model::SignalId>;

  Signals met_without(Signals const& closed) const { return met_from(roots_, closed); }

  Signals met_from(std::vector<model::ExpressionId> open, Signals const& closed) const {
    Signals met;
    while (!open.empty()) {
      auto const& node = circuit_.expressions[open.back()];
      open.pop_back();
      if (node.op >= model::Operator::negation) open.push_back(node.left);
      if (node.op > model::Operator::negation) open.push_back(node.right);
      if (node.op != model::Operator::signal || closed.count(node.left) != 0) continue;
      auto const& signal = circuit_.signals[node.left];
      if (met.insert(node.left).second && signal.kind == model::SignalKind::wire)
        open.push_back(signal.definition);
    }
    return met;
  }

  bool is_module(model::SignalId wire) const {
    auto const below = met_from({circuit_.signals[wire].definition}, {});
    auto const elsewhere = met_without({wire});
    std::vector<model::SignalId> levers;
    for (auto signal : below) {
      if (circuit_.signals[signal].kind == model::SignalKind::wire) continue;
      if (circuit_.signals[signal].kind != model::SignalKind::lever) return false;
      levers.push_back(signal);
    }
    auto const is_used_elsewhere = [&](auto signal) { return elsewhere.count(signal) != 0; };
    if (levers.size() < 2 || std::any_of(below.begin(), below.end(), is_used_elsewhere))
      return false;
    bool is_ever[2] = {false, false};
    for (unsigned row = 0; row < 1u << levers.size(); ++row) {
      std::vector<bool> values(circuit_.signals.size(), false);
      for (std::size_t i = 0; i < levers.size(); ++i) values[levers[i]] = (row >> i & 1u) != 0;
      for (auto each : circuit_.wire_order)
        values[each] = logic::is_true(circuit_, circuit_.signals[each].definition, values);
      is_ever[values[wire]] = true;
    }
    return is_ever[0] && is_ever[1];
  }

  model::Circuit const& circuit_;
  std::vector<model::ExpressionId> const& roots_;
};

}  // namespace

TEST_CASE("modules: of random circuits, those that the definition gives") {
  std::size_t found = 0;
  for (unsigned seed = 0; seed < 2000; ++seed) {
    std::mt19937 dice(seed);
    auto const pick = [&](std::size_t n) { return static_cast<std::size_t>(dice() % n); };
    wired::Circuit whole;
    std::vector<model::SignalId> unused;
    for (std::size_t i = 3 + pick(5); i > 0; --i)
      unused.push_back(
          whole.input(pick(8) == 0 ? model::SignalKind::button : model::SignalKind::lever));
    // Most signals are used once, so that modules are met often.
    auto const operand = [&] {
      auto const at = pick(unused.size());
      auto const signal = unused[at];
      if (unused.size() > 1 && pick(5) > 0)
        unused.erase(unused.begin() + static_cast<std::ptrdiff_t>(at));
      auto const used = whole.of(signal);
      return pick(3) == 0 ? whole.negation(used) : used;
    };
    constexpr model::Operator binary[] = {model::Operator::conjunction,
                                          model::Operator::disjunction, model::Operator::parity};
    for (std::size_t w = 2 + pick(4); w > 0; --w) {
      auto const left = operand(), right = operand();
      unused.push_back(whole.wire(whole.combined(binary[pick(3)], left, right)));
    }
    std::vector<model::ExpressionId> roots;
    for (std::size_t r = 1 + pick(3); r > 0; --r) roots.push_back(operand());
    INFO("seed " << seed);
    auto const own = wires(whole.built(), roots);
    CHECK(own == Definition(whole.built(), roots).topmost());
    found += own.size();
  }
  CHECK(found > 500);
}
