#include "engine/verdicts/claims.hpp"

#include <algorithm>

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::Claim;
using verdicts::Truthfulness;

namespace {

// Lever 0 shuts the way to A and opens nothing: with it on, bodies are lost before the block.
model::Design gated() { return draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}}); }

// Conditions on lever 0 of a drawn design: expression 0 is the lever itself.
model::ExpressionId const on = 0;
model::ExpressionId off(model::Design& design) {
  return design.circuit.add({model::Operator::negation, on, 0});
}

}  // namespace

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

TEST_CASE("no findings, violated: the findings that should not be there, and where") {
  auto design = gated();
  design.acceptances = {{model::FindingKind::still_water, {}, {}}};
  design.expectations = {{.claim = Claim::no_findings, .ceiling = model::Severity::warning}};
  auto const judgement = judge(design);
  auto const& broken = judgement.expectations[0];
  REQUIRE(broken.verdict == Truthfulness::violated);
  REQUIRE_FALSE(broken.findings.empty());
  logic::RowSet rows(2);
  for (std::size_t i = 0; i < judgement.findings.size(); ++i) {
    auto const& finding = judgement.findings[i];
    bool const is_named =
        std::find(broken.findings.begin(), broken.findings.end(), i) != broken.findings.end();
    CHECK(is_named == (finding.severity == model::Severity::error && !finding.accepted_by));
    if (is_named) rows |= finding.rows;
  }
  CHECK(broken.failing == rows);
  REQUIRE(broken.example);
  CHECK(broken.example->flips.empty());  // B is never reached, as built neither
}

TEST_CASE("no findings: only those of the rows spoken of are named") {
  auto design = gated();
  design.outlets.pop_back();
  design.expectations = {
      {.claim = Claim::no_findings, .condition = on, .ceiling = model::Severity::warning}};
  auto const judgement = judge(design);
  auto const& broken = judgement.expectations[0];
  REQUIRE(broken.verdict == Truthfulness::violated);
  CHECK(broken.failing == logic::RowSet::where_on(2, 0));
  CHECK(broken.example->flips == std::vector<model::SignalId>{0});
  for (auto i : broken.findings) CHECK(judgement.findings[i].severity == model::Severity::error);
}

TEST_CASE("no findings, finds: a state that is never reached belongs to every condition") {
  // Two latches of which one is on.
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto const alone = [&](model::ExpressionId one, model::ExpressionId other) {
    auto const other_off = design.circuit.add({model::Operator::negation, other, 0});
    return design.circuit.add({model::Operator::conjunction, one, other_off});
  };
  auto const first = alone(0, 1), second = alone(1, 0);
  add(design, {model::SignalKind::latch, true, first, second, 0});
  add(design, {model::SignalKind::latch, false, second, first, 0});
  for (auto const& finding : judge(design).findings) {
    if (finding.kind != model::FindingKind::unreached_state)
      design.acceptances.push_back({finding.kind, {}, {}});
  }
  auto const unreached = model::FindingKind::unreached_state;
  CHECK(verdict(design, {.claim = Claim::finds, .kind = unreached}) == Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::finds, .condition = on, .kind = unreached}) ==
        Truthfulness::holds);
  auto const broken = judged(design, {.claim = Claim::no_findings});
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK(broken.findings.size() == 1);
  CHECK(broken.failing.is_empty());  // no combination that is reached
  CHECK_FALSE(broken.example);
}

TEST_CASE("no findings: dangers of switching count as notes") {
  auto design = draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}});
  for (auto const& finding : judge(design).findings) {
    if (!model::is_of_switching(finding.kind)) design.acceptances.push_back({finding.kind, {}, {}});
  }
  CHECK(verdict(design, {.claim = Claim::no_findings, .ceiling = model::Severity::note}) ==
        Truthfulness::holds);
  auto const broken = judged(design, {.claim = Claim::no_findings});
  CHECK(broken.verdict == Truthfulness::violated);
  CHECK(broken.findings.size() == 2);
  CHECK(verdict(design, {.claim = Claim::finds, .kind = model::FindingKind::crushing_switch}) ==
        Truthfulness::holds);
  CHECK(verdict(design, {.claim = Claim::finds, .kind = model::FindingKind::spilling_switch}) ==
        Truthfulness::violated);
}
