#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Signals = std::vector<model::SignalId>;

namespace {

// Two latches of which one is on: lever 0 alone picks the first, lever 1 alone the second.
model::Design one_of_two(bool starts_on = true) {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  auto& circuit = design.circuit;
  auto const alone = [&](model::ExpressionId one, model::ExpressionId other) {
    auto const off = circuit.add({model::Operator::negation, other, 0});
    return circuit.add({model::Operator::conjunction, one, off});
  };
  auto const first = alone(0, 1), second = alone(1, 0);
  add(design, {model::SignalKind::latch, starts_on, first, second, 0});
  add(design, {model::SignalKind::latch, false, second, first, 0});
  return design;
}

}  // namespace

TEST_CASE("unreached state: assignments of the memory that come with no input") {
  auto const judgement = judge(one_of_two());
  auto const& finding = only(judgement, FindingKind::unreached_state);
  CHECK(finding.severity == model::Severity::note);
  CHECK(finding.signals == Signals{2, 3});
  CHECK(finding.measured == 2);  // neither and both
  auto const first = logic::RowSet::where_on(4, 2), second = logic::RowSet::where_on(4, 3);
  CHECK(finding.rows == ~(first ^ second));
  CHECK((finding.rows & judgement.combinations.reachable).is_empty());
  CHECK(finding.examples.empty());
  // Said to the letter: two cubes, of the two latches alone.
  CHECK(logic::rows_of(finding.condition, 4) == finding.rows);
  CHECK(finding.condition.size() == 2);
}

TEST_CASE("unreached state: a state that is left for ever is reached all the same") {
  Surveyed const surveyed(one_of_two(false));
  auto const findings = findings::unreached_states(surveyed.explored);
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].measured == 1);  // both
}

TEST_CASE("no unreached state: without memory, or where each is reached with some input") {
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::unreached_state));
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  add(design, {model::SignalKind::latch, false, 0, 1, 0});
  auto const judgement = judge(design);
  CHECK_FALSE(judgement.combinations.reachable.is_full());
  CHECK_FALSE(has(judgement, FindingKind::unreached_state));
}

TEST_CASE("no unreached state: a delay is no memory of its own") {
  auto design = draw({{"XXXXX"}, {"wi..A"}, {"....."}});
  add(design, {model::SignalKind::delay, false, 0, 0, 10});
  auto const constant = design.circuit.add({model::Operator::constant, 0, 0});
  add(design, {model::SignalKind::delay, false, constant, 0, 10});
  CHECK_FALSE(has(judge(design), FindingKind::unreached_state));
}
