#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Signals = std::vector<model::SignalId>;

namespace {

struct Run {
  model::Design design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  model::ExpressionId never = design.circuit.add({model::Operator::constant, 0, 0});
  model::ExpressionId both = design.circuit.add({model::Operator::conjunction, 0, 1});

  void latch(model::ExpressionId set, model::ExpressionId reset) {
    add(design, {model::SignalKind::latch, false, set, reset, 0});
  }
};

}  // namespace

TEST_CASE("no return: memory that stays changed, and every combination without a way back") {
  Run run;
  run.latch(0, run.never);
  auto const judgement = judge(run.design);
  auto const& finding = only(judgement, FindingKind::no_return);
  CHECK(finding.severity == model::Severity::warning);
  CHECK(finding.signals == Signals{2});
  CHECK(finding.rows == logic::RowSet::where_on(3, 2));
  REQUIRE(finding.examples.size() == 1);
  CHECK(finding.examples[0].flips == Signals{0});
}

TEST_CASE("no return: memory that starts on and stays off is changed too") {
  Run run;
  run.latch(run.never, 0);
  run.design.circuit.signals[2].starts_on = true;
  Surveyed const surveyed(run.design);
  auto const findings = findings::no_returns(surveyed.explored);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].signals == Signals{2});
  CHECK(findings[0].rows == ~logic::RowSet::where_on(3, 2));
}

TEST_CASE("no return: of several, the memory that is changed in every such state") {
  Run run;
  run.latch(0, run.never);
  run.latch(run.both, run.never);  // comes on only when the first is
  Surveyed const surveyed(run.design);
  auto const findings = findings::no_returns(surveyed.explored);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].signals == Signals{2});
}

TEST_CASE("no return: where none is changed in every such state, all that are in some") {
  Run run;
  run.latch(0, run.never);
  run.latch(1, run.never);
  run.latch(run.both, 0);  // lever 0 alone takes it back
  Surveyed const surveyed(run.design);
  auto const findings = findings::no_returns(surveyed.explored);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].signals == Signals{2, 3, 4});
}

TEST_CASE("a way back: memory that events can bring home, by however many") {
  Run plain;
  CHECK_FALSE(has(judge(plain.design), FindingKind::no_return));
  Run reset;
  reset.latch(0, 1);
  CHECK_FALSE(has(judge(reset.design), FindingKind::no_return));
  Run counting;  // lever 0 goes on twice, and the toggle is back
  add(counting.design, {model::SignalKind::toggle, false, 0, 0, 0});
  CHECK_FALSE(has(judge(counting.design), FindingKind::no_return));
}
