#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("unreached outlet: in no row, from no inlet, by no body") {
  auto const design = draw({{"XXXXXXX"}, {"wi.aA.B"}, {"....aXX"}});
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::unreached_outlet);
  CHECK(finding.outlets == std::vector<model::OutletId>{1});
  CHECK(places(design, finding) == Places{"6 0 1"});
  CHECK(finding.rows.is_full());
  CHECK(finding.severity == model::Severity::error);
}

TEST_CASE("no unreached outlet: one row and one body that get there are enough") {
  auto design = draw({{"XXXXX"}, {"wibaA"}, {"..X.."}});
  CHECK(has(judge(design), FindingKind::unreached_outlet));
  design.profiles.push_back({.footprint = 1, .height = 1});
  CHECK(has(judge(design), FindingKind::unreached_outlet));  // b and a are never both open
  auto gate = draw({{"XXXXX"}, {"wibcA"}, {"..X.."}});
  gate.profiles.push_back({.footprint = 1, .height = 1});
  CHECK_FALSE(has(judge(gate), FindingKind::unreached_outlet));
}
