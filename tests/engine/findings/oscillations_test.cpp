#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Signals = std::vector<model::SignalId>;

TEST_CASE("oscillation: the event, the loop, and every combination before it") {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto const latch = add_restless(design, 0);
  auto const judgement = judge(design);
  CHECK(judgement.is_decided);
  auto const& finding = only(judgement, FindingKind::oscillation);
  CHECK(finding.severity == model::Severity::error);
  CHECK(finding.event == 0u);
  CHECK(finding.signals == Signals{latch});
  // Lever 0 is never on, nor is the latch; lever 1 stands as it likes.
  CHECK(finding.rows == judgement.combinations.reachable);
  CHECK(finding.rows.count() == 2);
  REQUIRE(finding.examples.size() == 1);
  CHECK(finding.examples[0].flips.empty());
}

TEST_CASE("oscillation: only where it happens, and a loop that two events start is told for each") {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto const both = design.circuit.add({model::Operator::conjunction, 0, 1});
  auto const latch = add_restless(design, both);
  Surveyed const surveyed(design);
  auto const findings = findings::oscillations(surveyed.explored);
  REQUIRE(findings.size() == 2);
  for (auto const& finding : findings) CHECK(finding.signals == Signals{latch});
  CHECK(findings[0].event == 0u);
  CHECK(findings[0].rows.count() == 1);
  CHECK(findings[0].rows.first() == 0b010);  // lever 1 is on already
  CHECK(findings[1].event == 1u);
  CHECK(findings[1].rows.first() == 0b100);
  auto const judgement = judge(design);
  for (auto const& finding : judgement.findings) {
    if (finding.kind != FindingKind::oscillation) continue;
    REQUIRE(finding.examples.size() == 1);
    CHECK(finding.examples[0].flips == Signals{*finding.event == 0 ? 1u : 0u});
  }
}

TEST_CASE("oscillation: two loops that one event starts are one that keeps both") {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto const one = add_restless(design, 0), other = add_restless(design, 0);
  Surveyed const surveyed(design);
  auto const findings = findings::oscillations(surveyed.explored);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].signals == Signals{one, other});
}

TEST_CASE("oscillation as built: nothing else is judged, and nothing is decided") {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto const latch = add_restless(design, 0);
  design.circuit.signals[0].starts_on = true;
  design.expectations = {{.claim = model::Claim::never_lost}};
  auto const judgement = judge(design);
  CHECK_FALSE(judgement.is_decided);
  REQUIRE(judgement.findings.size() == 1);
  CHECK(judgement.findings[0].kind == FindingKind::oscillation);
  CHECK(judgement.findings[0].signals == Signals{latch});
  CHECK_FALSE(judgement.findings[0].event);
  CHECK(judgement.findings[0].rows.is_empty());
  REQUIRE(judgement.expectations.size() == 1);
  CHECK(judgement.expectations[0].verdict == verdicts::Truthfulness::undecided);
}

TEST_CASE("no oscillation: memory that gets quiet, round after round") {
  // Toggles that trigger each other come to rest.
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto const first = add(design, {model::SignalKind::toggle, false, 0, 0, 0});
  auto const second = add(design, {model::SignalKind::toggle, false, first, 0, 0});
  add(design, {model::SignalKind::toggle, false, second, 0, 0});
  CHECK_FALSE(has(judge(design), FindingKind::oscillation));
}
