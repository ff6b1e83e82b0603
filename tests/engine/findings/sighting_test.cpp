#include "engine/findings/sighting.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

namespace {

struct Bench {
  model::Grid grid{9, 1, 2};
  findings::Sightings sightings;

  findings::Sighting seen_at(int x, int measured = 0) const {
    return {FindingKind::dry_stand, {grid.cell({x, 0, 0})}, {}, measured, 0, {}};
  }
  std::vector<findings::Finding> gathered() const { return sightings.gathered(grid); }
};

}  // namespace

TEST_CASE("the same cells in several waters, inlets and bodies are one finding") {
  Bench bench;
  bench.sightings.add(1, 0, 0, {bench.seen_at(2)});
  bench.sightings.add(3, 1, 2, {bench.seen_at(2)});
  auto const findings = bench.gathered();
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].waters == std::vector<std::uint32_t>{1, 3});
  CHECK(findings[0].inlets == std::vector<model::InletId>{0, 1});
  CHECK(findings[0].profiles == std::vector<model::ProfileId>{0, 2});
}

TEST_CASE("who meets a finding when is told where not all do in all of its waters") {
  Bench bench;
  bench.sightings.add(1, 0, 0, {bench.seen_at(2)});
  bench.sightings.add(1, 1, 0, {bench.seen_at(2)});
  REQUIRE(bench.gathered().size() == 1);
  CHECK(bench.gathered()[0].meetings.empty());
  bench.sightings.add(3, 1, 0, {bench.seen_at(2)});
  auto const finding = bench.gathered()[0];
  REQUIRE(finding.meetings.size() == 2);
  CHECK(finding.meetings[0].inlet == 0);
  CHECK(finding.meetings[0].waters == std::vector<std::uint32_t>{1});
  CHECK(finding.meetings[1].waters == std::vector<std::uint32_t>{1, 3});
}

TEST_CASE("touching cells under the same circumstances are one finding, others are not") {
  Bench bench;
  bench.sightings.add(0, 0, 0, {bench.seen_at(1), bench.seen_at(3), bench.seen_at(2)});
  bench.sightings.add(0, 0, 0, {bench.seen_at(7)});
  CHECK(bench.gathered().size() == 2);
  bench.sightings.add(1, 0, 0, {bench.seen_at(2)});  // now 1 and 3 no longer touch
  CHECK(bench.gathered().size() == 4);
}

TEST_CASE("of several figures of one cause the worst is told") {
  Bench bench;
  bench.sightings.add(0, 0, 0, {bench.seen_at(2, 4)});
  bench.sightings.add(1, 0, 0, {bench.seen_at(2, 7)});
  bench.sightings.add(2, 0, 0, {bench.seen_at(2, 5)});
  REQUIRE(bench.gathered().size() == 1);
  CHECK(bench.gathered()[0].measured == 7);
}

TEST_CASE("a finding names its waters") {
  Bench bench;
  bench.sightings.add(4, 0, 0, {bench.seen_at(2)});
  bench.sightings.add(1, {bench.seen_at(5)});
  bench.sightings.add(3, {bench.seen_at(5)});
  auto const findings = bench.gathered();
  REQUIRE(findings.size() == 2);
  auto const& shared = findings[0].cells == bench.seen_at(2).cells ? findings[0] : findings[1];
  auto const& others = &shared == &findings[0] ? findings[1] : findings[0];
  CHECK(shared.waters == std::vector<std::uint32_t>{4});
  CHECK(others.waters == std::vector<std::uint32_t>{1, 3});
}

TEST_CASE("a judged finding gets the nearest way to one of its waters") {
  auto const judgement = judge(remembering());
  auto const& formed = only(judgement, FindingKind::formed_source);
  REQUIRE(formed.examples.size() == 1);
  CHECK(formed.examples[0].flips == std::vector<model::SignalId>{0, 0});
  CHECK(formed.examples[0].water == 2u);
  CHECK_FALSE(formed.examples[0].is_fresh);
  auto const& still = only(judgement, FindingKind::still_water);
  REQUIRE(still.examples.size() == 1);
  CHECK(still.examples[0].flips.empty());
  CHECK(still.waters == std::vector<std::uint32_t>{0});
}
