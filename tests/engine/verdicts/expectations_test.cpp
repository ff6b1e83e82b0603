#include "engine/verdicts/expectations.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Claim;
using verdicts::Truthfulness;

namespace {

// Lever 0 shuts the way to A and opens nothing: with it on, bodies are lost before the block.
model::Design gated() { return draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}}); }

verdicts::JudgedExpectation judged(model::Design design, model::Expectation expectation,
                                   Budget budget = {}) {
  design.expectations = {expectation};
  return judge(design, budget).expectations.at(0);
}

Truthfulness verdict(model::Design design, model::Expectation expectation) {
  return judged(std::move(design), expectation).verdict;
}

// Conditions on lever 0 of a drawn design: expression 0 is the lever itself.
model::ExpressionId const on = 0;
model::ExpressionId off(model::Design& design) {
  return design.circuit.add({model::Operator::negation, on, 0});
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
  CHECK(broken.example == 2u);
  auto started = gated();
  started.circuit.signals[1].starts_on = true;
  CHECK(judged(started, {.claim = Claim::never_lost}).example == 3u);
}

TEST_CASE("empty: a condition that never arises") {
  auto design = gated();
  auto const never = design.circuit.add({model::Operator::constant, 0, 0});
  for (auto claim : {Claim::never_lost, Claim::no_findings, Claim::finds}) {
    CHECK(verdict(design,
                  {.claim = claim, .condition = never, .kind = model::FindingKind::dry_stand}) ==
          Truthfulness::empty);
  }
}

TEST_CASE("undecided: more inputs than the budget, idle ones not counted") {
  auto design = gated();
  design.circuit.signals.push_back({model::SignalKind::lever, false, 0});  // switches nothing
  design.expectations = {{.claim = Claim::never_lost}};
  auto const judgement = judge(design, {.most_inputs = 1});
  CHECK_FALSE(judgement.is_decided);
  REQUIRE(judgement.expectations.size() == 1);
  CHECK(judgement.expectations[0].verdict == Truthfulness::undecided);
  CHECK(judgement.inputs.size() == 2);
  auto const decided = judge(design, {.most_inputs = 2});
  CHECK(decided.is_decided);
  CHECK(decided.expectations[0].verdict == Truthfulness::violated);
}

TEST_CASE("no findings: none above the ceiling, accepted ones left out, in the rows spoken of") {
  auto design = gated();
  auto const is_off = off(design);
  design.outlets.pop_back();
  CHECK(verdict(design, {.claim = Claim::no_findings, .ceiling = model::Severity::warning}) ==
        Truthfulness::violated);
  CHECK(verdict(design, {.claim = Claim::no_findings, .ceiling = model::Severity::error}) ==
        Truthfulness::holds);
  auto const when_off = model::Expectation{
      .claim = Claim::no_findings, .condition = is_off, .ceiling = model::Severity::warning};
  CHECK(verdict(design, when_off) == Truthfulness::holds);
  for (auto kind : {model::FindingKind::dry_stand, model::FindingKind::pinned,
                    model::FindingKind::still_water}) {
    design.acceptances.push_back({kind, {}, {}});
  }
  CHECK(verdict(design, {.claim = Claim::no_findings, .ceiling = model::Severity::warning}) ==
        Truthfulness::holds);
}

TEST_CASE("finds: a finding of the kind, at the cell, in the rows spoken of") {
  auto design = gated();
  auto const is_off = off(design);
  auto const last = design.grid.cell({2, 0, 1}), first = design.grid.cell({1, 0, 1});
  auto const pinned = model::FindingKind::pinned;
  CHECK(verdict(design, {.claim = Claim::finds, .kind = pinned}) == Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::finds, .kind = pinned, .cell = last}) ==
        Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::finds, .kind = pinned, .cell = first}) ==
        Truthfulness::violated);
  CHECK(verdict(design, {.claim = Claim::finds, .condition = on, .kind = pinned}) ==
        Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::finds, .condition = is_off, .kind = pinned}) ==
        Truthfulness::violated);
  CHECK(verdict(design, {.claim = Claim::finds, .kind = model::FindingKind::body_spill}) ==
        Truthfulness::violated);
}
