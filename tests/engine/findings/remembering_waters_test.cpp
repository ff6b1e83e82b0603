#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Signals = std::vector<model::SignalId>;
using Places = std::vector<std::string>;

TEST_CASE(
    "remembering water: a warning where the routes differ, with two ways to one combination") {
  auto const design = remembering();
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::remembering_water);
  CHECK(finding.severity == model::Severity::warning);
  CHECK(places(design, finding) == Places{"4 0 1", "5 0 1"});
  CHECK(finding.inlets == std::vector<model::InletId>{0});
  CHECK(finding.rows == ~logic::RowSet::where_on(2, 0));
  CHECK(finding.measured == 2);
  REQUIRE(finding.examples.size() == 2);
  CHECK(finding.examples[0].flips.empty());
  CHECK(finding.examples[1].flips == Signals{0, 0});
  CHECK(finding.examples[0].row == finding.examples[1].row);
  CHECK(finding.examples[0].water != finding.examples[1].water);
  CHECK(finding.examples[0].is_fresh);
  CHECK_FALSE(finding.examples[1].is_fresh);
}

TEST_CASE("remembering water: a note where every body goes the same way") {
  auto const design = draw({{"XXXXXXX"}, {"A.iw.vX"}, {"......."}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::remembering_water);
  CHECK(finding.severity == model::Severity::note);
  CHECK(finding.inlets.empty());
  CHECK(finding.examples.size() == 2);
}

TEST_CASE("remembering water: only the inlets whose bodies go another way are named") {
  auto const design = draw({{"XXXXXXX"}, {"A.iw.vX"}, {"...j..."}, {"......."}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::remembering_water);
  CHECK(finding.inlets == std::vector<model::InletId>{1});
}

TEST_CASE("remembering water: combinations whose waters differ at the same cells are one cause") {
  // Lever 1 moves a cell that no water touches: other waters, and the same difference.
  auto const design = draw({{"XXXXXXXX"}, {"A..w.vXc"}, {"...i...X"}, {".......X"}});
  Surveyed const surveyed(design);
  CHECK(surveyed.combinations.situations.size() == 4);
  auto const findings = findings::remembering_waters(surveyed.explored, surveyed.by_water());
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].rows == ~logic::RowSet::where_on(2, 0));
}

TEST_CASE("remembering water: at other cells it is another cause") {
  // The same channel twice, one behind a wall, the second with lever 1 for its far source.
  auto design = draw({{"XXXXXXX", "XXXXXXX", "XXXXXXX"},
                      {"A..w.vX", "XXXXXXX", "B..w.vX"},
                      {"...i...", "XXXXXXX", "...j..."},
                      {".......", "XXXXXXX", "......."}});
  put(design, {5, 2, 1}, {model::material::water, model::material::open, 1});
  Surveyed const surveyed(design);
  auto const findings = findings::remembering_waters(surveyed.explored, surveyed.by_water());
  // Either alone, and both where both levers are off.
  CHECK(findings.size() == 3);
  for (auto const& finding : findings) {
    auto const is_both = finding.cells.size() == 4;
    CHECK(finding.measured == (is_both ? 4 : 2));
    CHECK(finding.inlets.size() == (is_both ? 2u : 1u));
  }
}

TEST_CASE("no remembering water: what a latch tells apart is another combination") {
  auto design = remembering();
  auto const never = design.circuit.add({model::Operator::constant, 0, 0});
  add(design, {model::SignalKind::latch, false, 0, never, 0});
  CHECK_FALSE(has(judge(design), FindingKind::remembering_water));
}

TEST_CASE(
    "no remembering water: where one water comes with each combination, or none is followed") {
  CHECK_FALSE(
      has(judge(draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}})), FindingKind::remembering_water));
  Budget budget;
  budget.follows_history = false;
  CHECK_FALSE(has(judge(remembering(), budget), FindingKind::remembering_water));
}
