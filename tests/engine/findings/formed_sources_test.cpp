#include "engine/findings/families.hpp"

#include "engine/water/settle.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("formed source: one that the water as built would not have, by switching") {
  auto const design = remembering();
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::formed_source);
  CHECK(finding.severity == model::Severity::note);
  CHECK(places(design, finding) == Places{"4 0 1"});
  // With both sources standing it forms from dry as well.
  CHECK(finding.rows == ~logic::RowSet::where_on(2, 0));
  CHECK(finding.waters == std::vector<std::uint32_t>{2});
}

TEST_CASE("formed source: placed ones and those of the fresh water are none") {
  Poured const now({{"XXXXX"}, {"wS.Sw"}});
  auto fresh = now.field;
  CHECK(findings::formed_sources({now.arrangement, now.field, &fresh}).empty());
  CHECK(findings::formed_sources({now.arrangement, now.field, nullptr}).empty());
  fresh[now.at({3, 0, 1})] = 7;
  auto const seen = findings::formed_sources({now.arrangement, now.field, &fresh});
  REQUIRE(seen.size() == 1);
  CHECK(seen[0].cells == std::vector{now.at({3, 0, 1})});
  fresh[now.at({1, 0, 1})] = water::dry;
  CHECK(findings::formed_sources({now.arrangement, now.field, &fresh}).size() == 2);
}
