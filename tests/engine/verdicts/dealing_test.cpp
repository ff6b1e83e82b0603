#include "engine/verdicts/claims.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Claim;
using verdicts::Truthfulness;
using Dealt = std::vector<std::optional<std::uint32_t>>;

namespace {

// A plate under the run turns a gate: one body to B, the next on to A.
model::Design dealer() {
  auto design =
      draw({{"wi...pa....A", "XXXXXbXXXXXX", "XXXXX.XXXXXX", "XXXXX.XXXXXX", "XXXXXBXXXXXX"},
            {"....swa.....", "XXXXXbXXXXXX", "XXXXX.XXXXXX", "XXXXX.XXXXXX", "XXXXX.XXXXXX"}});
  auto& circuit = design.circuit;
  circuit.signals[1] = {model::SignalKind::plate, false, 0, 0, 0};
  auto const pressed = circuit.add({model::Operator::signal, 1, 0});
  circuit.signals[0] = {model::SignalKind::toggle, false, pressed, 0, 0};
  design.plates = {{1, {design.grid.cell({5, 0, 0})}}};
  return design;
}

model::Expectation deals(Dealt dealt, int interval = 400) {
  model::Expectation expectation{.claim = Claim::deals};
  expectation.dealt = std::move(dealt);
  expectation.ticks = interval;
  return expectation;
}

}  // namespace

TEST_CASE("deals: a train ends at the outlets named, in the order of entering") {
  auto const kept = judged(dealer(), deals({1, 0, 1, 0}));
  CHECK(kept.dealt == Dealt{1, 0, 1, 0});
  CHECK(kept.verdict == Truthfulness::holds);
  auto const broken = judged(dealer(), deals({0, 1, 0, 1}));
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK(broken.dealt == Dealt{1, 0, 1, 0});
  CHECK(verdict(dealer(), deals({1, 0, 1})) == kept.verdict);
  CHECK(verdict(dealer(), deals({1, 0, {}})) == Truthfulness::violated);
}

TEST_CASE("deals: a run without a choice holds, one with a choice only within bounds") {
  auto const straight = draw({{"XXXXXXX"}, {"wi...A."}, {"......."}});
  CHECK(verdict(straight, deals({0, 0}, 60)) == Truthfulness::holds);
  // A current to two sides at once: the body takes one of them.
  auto const corner = draw({{"XXXXX", "XXXXX", "XXXXX", "XXXXX"},
                            {"wi..A", "XX..A", "XXAAA", "XXXXX"},
                            {".....", "XX...", "XX...", "XXXXX"}});
  CHECK(verdict(corner, deals({0, 0}, 60)) == Truthfulness::holds_within_bounds);
}

TEST_CASE("deals: a body that ends at no outlet is dealt to none") {
  auto const blocked = draw({{"XXXXXXX"}, {"wi..X.A"}, {"....X.."}});
  auto const kept = judged(blocked, deals({{}, {}}, 60));
  CHECK(kept.verdict == Truthfulness::holds);
  CHECK(kept.dealt == Dealt{{}, {}});
  CHECK(verdict(blocked, deals({0, {}}, 60)) == Truthfulness::violated);
}

TEST_CASE("deals, after events: the train meets what they have left behind") {
  // Pressed once, the plate has turned the gate before the first body comes.
  auto expectation = deals({0, 1, 0});
  expectation.events = {1};
  CHECK(judged(dealer(), expectation).dealt == Dealt{0, 1, 0});
  CHECK(verdict(dealer(), expectation) != Truthfulness::violated);
  auto const gate = draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}});
  auto shut = deals({{}}, 60);
  CHECK(verdict(gate, shut) == Truthfulness::violated);
  shut.events = {0};
  CHECK(verdict(gate, shut) == Truthfulness::holds);
}

TEST_CASE("deals: of the inlet and body named") {
  auto const design = draw({{"XXXXXXXX"}, {"Bi.w.j.A"}, {"........"}});
  CHECK(verdict(design, deals({1}, 60)) != Truthfulness::violated);
  auto other = deals({0}, 60);
  other.inlet = 1;
  CHECK(verdict(design, other) != Truthfulness::violated);
}
