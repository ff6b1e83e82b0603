#include "engine/logic/modules.hpp"

#include <algorithm>
#include <optional>
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
  auto const wire =
      whole.wire(whole.combined(model::Operator::disjunction, whole.of(a), whole.of(b)));
  auto const gate = whole.of(wire), both = whole.conjunction(whole.of(a), whole.of(b));
  auto circuit = whole.built();
  CHECK(wires(circuit, {gate}) == Wires{wire});
  circuit.nevers = {both};
  CHECK(wires(circuit, {gate}).empty());
}

TEST_CASE("modules: a wire that reads a lever in both senses is no lever") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input();
  auto const and_b = whole.conjunction(whole.of(a), whole.of(b));
  auto const both_ways = whole.wire(whole.conjunction(and_b, whole.negation(whole.of(a))));
  auto const either = whole.wire(whole.combined(model::Operator::parity, whole.of(a), whole.of(b)));
  auto const twice = whole.wire(whole.combined(model::Operator::disjunction, and_b, whole.of(a)));
  CHECK(wires(whole.built(), {whole.of(both_ways)}).empty());
  CHECK(wires(whole.built(), {whole.of(either)}).empty());
  CHECK(wires(whole.built(), {whole.of(twice)}) == Wires{twice});
}

TEST_CASE("modules: what constants settle does not count") {
  wired::Circuit whole;
  auto const a = whole.input(), b = whole.input(), c = whole.input();
  auto const and_b = whole.conjunction(whole.of(a), whole.of(b));
  auto const begun =
      whole.wire(whole.combined(model::Operator::disjunction, whole.constant(false), and_b));
  auto const settled = whole.wire(whole.conjunction(whole.constant(false), and_b));
  auto const one_left = whole.wire(
      whole.combined(model::Operator::disjunction,
                     whole.conjunction(whole.of(b), whole.constant(false)), whole.of(c)));
  CHECK(wires(whole.built(), {whole.of(begun)}) == Wires{begun});
  CHECK(wires(whole.built(), {whole.of(settled)}).empty());
  CHECK(wires(whole.built(), {whole.of(one_left)}).empty());
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
// it, each way to a lever below it has as many negations, even or odd, as the other ways.
class Definition {
 public:
  Definition(model::Circuit const& circuit, std::vector<model::ExpressionId> const& roots)
      : circuit_(circuit), roots_(roots) {}

  Wires topmost() const {
    std::set<model::SignalId> all, inner;
    for (auto wire : met_from(roots_, {})) {
      if (circuit_.signals[wire].kind == model::SignalKind::wire && is_module(wire))
        all.insert(wire);
    }
    for (auto wire : all) {
      for (auto below : below_of(wire)) inner.insert(below);
    }
    Wires found;
    std::set_difference(all.begin(), all.end(), inner.begin(), inner.end(),
                        std::back_inserter(found));
    return found;
  }

  // What its being a lever rests on: it is on and off, and all combinations of its levers in which
  // it has one value hang together by single flips.
  bool hangs_together(model::SignalId wire) const {
    std::vector<model::SignalId> levers;
    for (auto signal : below_of(wire)) {
      if (circuit_.signals[signal].is_input()) levers.push_back(signal);
    }
    std::vector<bool> is_on;
    for (unsigned row = 0; row < 1u << levers.size(); ++row) {
      std::vector<bool> values(circuit_.signals.size(), false);
      for (std::size_t i = 0; i < levers.size(); ++i) values[levers[i]] = (row >> i & 1u) != 0;
      for (auto each : circuit_.wire_order)
        values[each] = logic::is_true(circuit_, circuit_.signals[each].definition, values);
      is_on.push_back(values[wire]);
    }
    return pieces(is_on, levers.size(), true) == 1 && pieces(is_on, levers.size(), false) == 1;
  }

 private:
  using Signals = std::set<model::SignalId>;

  static std::size_t pieces(std::vector<bool> const& is_on, std::size_t levers, bool value) {
    std::vector<bool> is_met(is_on.size(), false);
    std::size_t count = 0;
    for (unsigned row = 0; row < is_on.size(); ++row) {
      if (is_on[row] != value || is_met[row]) continue;
      ++count;
      std::vector<unsigned> open{row};
      is_met[row] = true;
      while (!open.empty()) {
        auto const from = open.back();
        open.pop_back();
        for (std::size_t i = 0; i < levers; ++i) {
          auto const next = from ^ 1u << i;
          if (is_on[next] == value && !is_met[next]) open.push_back(next);
          is_met[next] = is_met[next] || is_on[next] == value;
        }
      }
    }
    return count;
  }

  Signals below_of(model::SignalId wire) const {
    return met_from({circuit_.signals[wire].definition}, {});
  }

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

  // The value that constants alone give it.
  std::optional<bool> settled(model::ExpressionId id) const {
    auto const& [op, left, right] = circuit_.expressions[id];
    if (op == model::Operator::constant) return left != 0;
    if (op == model::Operator::signal) {
      auto const& signal = circuit_.signals[left];
      return signal.is_input() ? std::nullopt : settled(signal.definition);
    }
    auto const one = settled(left);
    if (op == model::Operator::negation) return one ? std::optional(!*one) : std::nullopt;
    auto const other = settled(right);
    if (op == model::Operator::conjunction && (one == false || other == false)) return false;
    if (op == model::Operator::disjunction && (one == true || other == true)) return true;
    if (!one || !other) return std::nullopt;
    return op == model::Operator::parity ? *one != *other : *one;
  }

  // Every way by itself, but for what constants settle.
  void follow_ways(model::ExpressionId id, bool is_negated,
                   std::set<std::pair<model::SignalId, bool>>& senses) const {
    if (settled(id)) return;
    auto const& [op, left, right] = circuit_.expressions[id];
    if (op == model::Operator::signal) {
      auto const& signal = circuit_.signals[left];
      if (signal.is_input()) senses.emplace(left, is_negated);
      if (signal.kind == model::SignalKind::wire)
        follow_ways(signal.definition, is_negated, senses);
      return;
    }
    for (bool const is_other : {false, true}) {
      if (is_other && op != model::Operator::parity) continue;
      bool const sense = is_negated != (is_other || op == model::Operator::negation);
      follow_ways(left, sense, senses);
      if (op != model::Operator::negation) follow_ways(right, sense, senses);
    }
  }

  bool is_module(model::SignalId wire) const {
    auto const below = below_of(wire);
    auto const elsewhere = met_from(roots_, {wire});
    for (auto signal : below) {
      auto const kind = circuit_.signals[signal].kind;
      if (elsewhere.count(signal) != 0) return false;
      if (kind != model::SignalKind::lever && kind != model::SignalKind::wire) return false;
    }
    std::set<std::pair<model::SignalId, bool>> senses;
    follow_ways(circuit_.signals[wire].definition, false, senses);
    std::set<model::SignalId> levers;
    for (auto const& [lever, is_negated] : senses) levers.insert(lever);
    return levers.size() > 1 && senses.size() == levers.size();
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
      auto const used = pick(12) == 0 ? whole.constant(pick(2) == 0) : whole.of(signal);
      return pick(3) == 0 ? whole.negation(used) : used;
    };
    constexpr model::Operator binary[] = {model::Operator::conjunction,
                                          model::Operator::disjunction, model::Operator::parity};
    for (std::size_t w = 2 + pick(4); w > 0; --w) {
      auto const left = operand(), right = operand();
      unused.push_back(whole.wire(whole.combined(binary[pick(7) / 3], left, right)));
    }
    std::vector<model::ExpressionId> roots;
    for (std::size_t r = 1 + pick(3); r > 0; --r) roots.push_back(operand());
    INFO("seed " << seed);
    Definition const definition(whole.built(), roots);
    auto const own = wires(whole.built(), roots);
    CHECK(own == definition.topmost());
    for (auto wire : own) CHECK(definition.hangs_together(wire));
    found += own.size();
  }
  CHECK(found > 500);
}
