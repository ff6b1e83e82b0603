#include "engine/verdicts/claims.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Claim;
using verdicts::Truthfulness;
using Flips = std::vector<model::SignalId>;

namespace {

// Lever 0 shuts a run of five cells; j enters two cells before A.
model::Design shut_run() { return draw({{"XXXXXXXXX"}, {"wi.aj.A.X"}, {"...a....X"}}); }

constexpr int cell = 19;  // ticks that a current carries a body

model::Expectation clears(int ticks, std::optional<model::ExpressionId> condition = {}) {
  model::Expectation expectation{.claim = Claim::clears, .condition = condition};
  expectation.ticks = ticks;
  return expectation;
}

}  // namespace

TEST_CASE("clears: every body has left within the time, to the tick") {
  auto const design = draw({{"XXXXXXXX"}, {"wi....AX"}, {".......X"}});
  auto const kept = judged(design, clears(5 * cell));
  CHECK(kept.verdict == Truthfulness::holds);
  CHECK(kept.measured == 5 * cell);
  CHECK_FALSE(kept.example);
  CHECK(kept.failing.is_empty());
  auto const broken = judged(design, clears(5 * cell - 1));
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK(broken.measured == 5 * cell);
  CHECK(broken.failing.is_full());
  REQUIRE(broken.example);
  CHECK(broken.example->flips.empty());
}

TEST_CASE("clears: a body that is held never leaves; the combinations in which it is are named") {
  auto design = shut_run();
  auto const broken = judged(design, clears(100'000));
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK_FALSE(broken.measured);
  CHECK(broken.failing == logic::RowSet::where_on(2, 0));
  CHECK(broken.condition == std::vector{logic::Cube{1, 1}});
  REQUIRE(broken.example);
  CHECK(broken.example->flips == Flips{0});
  auto const off = design.circuit.add({model::Operator::negation, 0, 0});
  CHECK(verdict(design, clears(100'000, off)) == Truthfulness::holds);
}

TEST_CASE("clears: of one inlet or body alone") {
  auto design = shut_run();
  auto const off = design.circuit.add({model::Operator::negation, 0, 0});
  auto near = clears(2 * cell, off);
  near.inlet = 1;
  CHECK(verdict(design, near) == Truthfulness::holds);
  CHECK(judged(design, near).measured == 2 * cell);
  auto far = near;
  far.inlet = 0;
  CHECK(verdict(design, far) == Truthfulness::violated);
  CHECK(verdict(design, clears(2 * cell, off)) == Truthfulness::violated);
}

TEST_CASE("clears, after events: the one water after them") {
  auto expectation = clears(5 * cell);
  auto const design = draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}});
  expectation.events = {0};
  auto const shut = judged(design, expectation);
  CHECK(shut.verdict == Truthfulness::violated);
  CHECK_FALSE(shut.measured);
  CHECK(shut.example->flips == Flips{0});
  CHECK(shut.failing.count() == 1);
  expectation.events = {0, 0};
  CHECK(verdict(design, expectation) == Truthfulness::holds);
  auto restless = design;
  add_restless(restless, 1);
  expectation.events = {1};
  CHECK(verdict(restless, expectation) == Truthfulness::undecided);
  CHECK(judged(restless, expectation).never_rests);
}

TEST_CASE("clears: a water that only switching brings counts where the history is followed") {
  auto design = remembering();
  auto const off = design.circuit.add({model::Operator::negation, 0, 0});
  // As built the body stays for ever; the water that remembers carries it to A.
  auto const broken = judged(design, clears(100'000, off));
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK(broken.example->flips.empty());
  CHECK(verdict(design, clears(100'000, 0)) == Truthfulness::holds);
  Budget budget;
  budget.follows_history = false;
  CHECK(verdict(design, clears(100'000, 0), budget) == Truthfulness::holds_within_bounds);
}
