#include "engine/verdicts/expectations.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Claim;
using verdicts::Truthfulness;
using Flips = std::vector<model::SignalId>;

namespace {

// Lever 0 shuts the way to A and opens nothing: with it on, bodies are lost before the block.
model::Design gated() { return draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}}); }

// Conditions on lever 0 of a drawn design: expression 0 is the lever itself.
model::ExpressionId const on = 0;
model::ExpressionId off(model::Design& design) {
  return design.circuit.add({model::Operator::negation, on, 0});
}

Budget with_at_most(int variables) {
  Budget budget;
  budget.most_variables = variables;
  return budget;
}

}  // namespace

TEST_CASE("reaches: the route is certain and ends there") {
  auto design = gated();
  auto const is_off = off(design);
  CHECK(verdict(design, {.claim = Claim::reaches, .outlet = 0, .condition = is_off}) ==
        Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::reaches, .outlet = 1, .condition = is_off}) ==
        Truthfulness::violated);
  CHECK(verdict(design, {.claim = Claim::reaches, .outlet = 0, .condition = on}) ==
        Truthfulness::violated);
}

TEST_CASE("may reach, never reaches, reaches nothing") {
  auto design = gated();
  auto const is_off = off(design);
  auto const says = [&](Claim claim, std::uint32_t outlet, model::ExpressionId when) {
    return verdict(design, {.claim = claim, .outlet = outlet, .condition = when});
  };
  CHECK(says(Claim::may_reach, 0, is_off) == Truthfulness::holds);
  CHECK(says(Claim::may_reach, 0, on) == Truthfulness::violated);
  CHECK(says(Claim::never_reaches, 0, on) == Truthfulness::holds);
  CHECK(says(Claim::never_reaches, 0, is_off) == Truthfulness::violated);
  CHECK(says(Claim::reaches_nothing, 0, on) == Truthfulness::holds);
  CHECK(says(Claim::reaches_nothing, 0, is_off) == Truthfulness::violated);
}

TEST_CASE("never trapped, never lost") {
  auto design = gated();
  auto const is_off = off(design);
  for (auto claim : {Claim::never_trapped, Claim::never_lost}) {
    CHECK(verdict(design, {.claim = claim, .condition = is_off}) == Truthfulness::holds);
    CHECK(verdict(design, {.claim = claim, .condition = on}) == Truthfulness::violated);
  }
}

TEST_CASE("never split, never doubtful, never spilled") {
  auto const straight = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  for (auto claim : {Claim::never_split, Claim::never_doubtful, Claim::never_spilled}) {
    CHECK(verdict(straight, {.claim = claim}) == Truthfulness::holds);
  }
  auto const split = draw({{"XXXXX", "XXXXX"}, {"wi..A", "XXBXX"}, {".....", "XX.XX"}});
  CHECK(verdict(split, {.claim = Claim::never_split}) == Truthfulness::violated);
  auto leaking =
      draw({{"XXXXX", "XXXXX", "XXXXX"}, {"XXXXX", "Xwi..", "XXXAX"}, {"XXXXX", "X....", "XXX.X"}});
  open_the_outside(leaking);
  CHECK(verdict(leaking, {.claim = Claim::never_spilled}) == Truthfulness::violated);
  CHECK(verdict(leaking, {.claim = Claim::never_doubtful}) == Truthfulness::violated);
}

TEST_CASE("a claim without inlet or profile speaks of every one") {
  auto design = draw({{"XXXXX"}, {"wi.Aj"}, {"....."}});
  CHECK(verdict(design, {.claim = Claim::never_lost}) == Truthfulness::violated);
  CHECK(verdict(design, {.claim = Claim::never_lost, .inlet = 0}) == Truthfulness::holds);
  auto const broken = judged(design, {.claim = Claim::never_lost});
  CHECK(broken.inlet == 1u);
  CHECK(broken.profile == 0u);
  auto tall = draw({{"XXXX"}, {"wi.A"}, {"X.XX"}});
  tall.profiles = {{}, {.footprint = 1, .height = 1}};
  CHECK(verdict(tall, {.claim = Claim::reaches, .profile = 1, .outlet = 0}) == Truthfulness::holds);
  CHECK(judged(tall, {.claim = Claim::reaches, .outlet = 0}).profile == 0u);
}

TEST_CASE("violated: the failing rows, their condition, and the row nearest to as built") {
  auto const broken = judged(gated(), {.claim = Claim::never_lost});
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK(broken.failing == logic::RowSet::where_on(2, 0));
  CHECK(broken.condition == std::vector{logic::Cube{1, 1}});
  REQUIRE(broken.example);
  CHECK(broken.example->row == 2u);
  CHECK(broken.example->flips == Flips{0});
  CHECK(broken.example->is_fresh);
  CHECK(broken.route->verdict == body::Verdict::lost);
  auto started = gated();
  started.circuit.signals[1].starts_on = true;
  CHECK(judged(started, {.claim = Claim::never_lost}).example->row == 3u);
}

TEST_CASE("empty: a condition that never arises") {
  auto design = gated();
  auto const never = design.circuit.add({model::Operator::constant, 0, 0});
  for (auto claim : {Claim::never_lost, Claim::no_findings, Claim::finds, Claim::clears}) {
    CHECK(verdict(design,
                  {.claim = claim, .condition = never, .kind = model::FindingKind::dry_stand}) ==
          Truthfulness::empty);
  }
}

TEST_CASE("empty: a condition that could arise, and that the machine never comes to") {
  // The latch is on once lever 0 was, and off only after lever 1 alone.
  auto design = gated();
  auto const latch = add(design, {model::SignalKind::latch, false, 0, 1, 0});
  auto const off_latch = design.circuit.add({model::Operator::negation, latch, 0});
  auto const never = design.circuit.add({model::Operator::conjunction, on, off_latch});
  auto const always = design.circuit.add({model::Operator::conjunction, on, latch});
  for (auto claim : {Claim::never_lost, Claim::no_findings, Claim::finds, Claim::clears}) {
    model::Expectation expectation{.claim = claim, .condition = never};
    if (claim == Claim::finds) expectation.kind = model::FindingKind::pinned;
    CHECK(verdict(design, expectation) == Truthfulness::empty);
    expectation.condition = always;
    CHECK(verdict(design, expectation) != Truthfulness::empty);
  }
}

TEST_CASE("undecided: more inputs than the budget, idle ones not counted") {
  auto design = gated();
  design.circuit.signals.push_back({model::SignalKind::lever, false, 0});  // switches nothing
  design.expectations = {{.claim = Claim::never_lost}};
  auto const judgement = judge(design, with_at_most(1));
  CHECK_FALSE(judgement.is_decided);
  REQUIRE(judgement.expectations.size() == 1);
  CHECK(judgement.expectations[0].verdict == Truthfulness::undecided);
  CHECK(judgement.variables.size() == 2);
  auto const decided = judge(design, with_at_most(2));
  CHECK(decided.is_decided);
  CHECK(decided.expectations[0].verdict == Truthfulness::violated);
}

TEST_CASE("undecided: memory counts, delays outside loops do not") {
  auto design = gated();
  for (int i = 0; i < 3; ++i) add(design, {model::SignalKind::delay, false, on, 0, 10});
  design.expectations = {{.claim = Claim::never_lost}};
  CHECK(judge(design, with_at_most(2)).is_decided);
  auto const latch = add(design, {model::SignalKind::latch, false, 0, 1, 0});
  put(design, {5, 0, 2}, {model::material::rock, model::material::open, latch});
  auto const too_many = judge(design, with_at_most(2));
  CHECK_FALSE(too_many.is_decided);
  CHECK(too_many.variables == Flips{0, 1, 5});
  CHECK(judge(design, with_at_most(3)).is_decided);
}

TEST_CASE("holds within bounds: the water was not followed, and it was asked for everything") {
  auto const design = gated();
  Budget unfollowed;
  unfollowed.follows_history = false;
  Budget exhausted;
  exhausted.history.most_changes = 0;
  model::Expectation const kept{.claim = Claim::never_split};
  CHECK(verdict(design, kept) == Truthfulness::holds);
  for (auto const& budget : {unfollowed, exhausted}) {
    CHECK(verdict(design, kept, budget) == Truthfulness::holds_within_bounds);
    // What is broken stays broken, what is found stays found.
    CHECK(verdict(design, {.claim = Claim::never_lost}, budget) == Truthfulness::violated);
    CHECK(verdict(design, {.claim = Claim::finds, .kind = model::FindingKind::pinned}, budget) ==
          Truthfulness::holds);
    // After events one water is followed, whatever the budget.
    CHECK(verdict(design, {.claim = Claim::never_split, .events = {0}}, budget) ==
          Truthfulness::holds);
  }
}

TEST_CASE("holds within bounds: notes were asked about, and those of switching not looked for") {
  // Lever 0 moves a cell that no body and no water meets.
  auto design = draw({{"XXXXXXX"}, {"wi..A.a"}, {".....XX"}});
  for (auto const& finding : judge(design).findings)
    design.acceptances.push_back({finding.kind, {}, {}});
  model::Expectation const none{.claim = Claim::no_findings};
  REQUIRE(verdict(design, none) == Truthfulness::holds);
  Budget unswitched;
  unswitched.switching.most_switchings = 0;
  CHECK(verdict(design, none, unswitched) == Truthfulness::holds_within_bounds);
  CHECK(verdict(design, {.claim = Claim::no_findings, .ceiling = model::Severity::note},
                unswitched) == Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::never_lost}, unswitched) == Truthfulness::holds);
}
