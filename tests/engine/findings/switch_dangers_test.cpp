#include "engine/findings/families.hpp"

#include <algorithm>

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using explore::Danger;
using model::FindingKind;

namespace {

explore::Guard guard(model::SignalId event, bool goes_on, std::vector<Danger> dangers,
                     std::optional<int> wait = 50) {
  explore::Guard made;
  made.event = event;
  made.goes_on = goes_on;
  made.rows = goes_on ? ~logic::RowSet::where_on(2, 0) : logic::RowSet::where_on(2, 0);
  made.wait = wait;
  made.example.row = goes_on ? 0 : 2;
  for (auto& danger : dangers) made.threats.push_back({std::move(danger), made.rows, made.example});
  return made;
}

std::vector<FindingKind> kinds(std::vector<findings::Finding> const& findings) {
  std::vector<FindingKind> all;
  for (auto const& finding : findings) all.push_back(finding.kind);
  std::sort(all.begin(), all.end());
  return all;
}

}  // namespace

TEST_CASE("switch dangers: a finding of its own for each kind and event") {
  auto const findings =
      findings::switch_dangers({guard(0, true,
                                      {{Danger::Kind::misrouted, 0, 0, 1, {}},
                                       {Danger::Kind::trapped, 0, 0, {}, {4, 6}},
                                       {Danger::Kind::spilled, 0, 0, {}, {2}},
                                       {Danger::Kind::crushed, 0, 0, {}, {3}}}),
                                guard(1, true, {{Danger::Kind::crushed, 0, 0, {}, {9}}})});
  CHECK(kinds(findings) == std::vector{FindingKind::misrouting_switch,
                                       FindingKind::stranding_switch, FindingKind::spilling_switch,
                                       FindingKind::crushing_switch, FindingKind::crushing_switch});
  for (auto const& finding : findings) {
    CHECK(finding.severity == model::Severity::note);
    CHECK(finding.ticks == 50);
    REQUIRE(finding.examples.size() == 1);
    REQUIRE(finding.event);
    if (finding.kind == FindingKind::misrouting_switch)
      CHECK(finding.outlets == std::vector<model::OutletId>{1});
    if (finding.kind == FindingKind::stranding_switch)
      CHECK(finding.cells == std::vector<model::Cell>{4, 6});
    if (finding.kind == FindingKind::crushing_switch)
      CHECK(finding.cells == std::vector<model::Cell>{*finding.event == 0 ? 3u : 9u});
  }
}

TEST_CASE("switch dangers: inlets, bodies, outlets and cells of one kind and event add up") {
  auto const findings = findings::switch_dangers(
      {guard(0, true,
             {{Danger::Kind::trapped, 1, 0, {}, {6, 8}}, {Danger::Kind::trapped, 0, 2, {}, {4, 6}}},
             30),
       guard(0, false, {{Danger::Kind::trapped, 0, 0, {}, {5}}}, 70)});
  REQUIRE(findings.size() == 1);
  CHECK(findings[0].inlets == std::vector<model::InletId>{0, 1});
  CHECK(findings[0].profiles == std::vector<model::ProfileId>{0, 2});
  CHECK(findings[0].cells == std::vector<model::Cell>{4, 5, 6, 8});
  CHECK(findings[0].rows.is_full());
  CHECK(findings[0].ticks == 70);  // the longer of the two waits
  REQUIRE(findings[0].examples.size() == 1);
  CHECK(findings[0].examples[0].row == 0);
}

TEST_CASE("switch dangers: no wait is long enough where a body may never leave") {
  Danger const trapped{Danger::Kind::trapped, 0, 0, {}, {4}};
  auto const wait_of = [&](std::optional<int> on, std::optional<int> off) {
    return findings::switch_dangers(
               {guard(0, true, {trapped}, on), guard(0, false, {trapped}, off)})
        .at(0)
        .ticks;
  };
  CHECK(wait_of(40, 30) == 40);
  CHECK_FALSE(wait_of({}, 30));
  CHECK_FALSE(wait_of(40, {}));
  CHECK(findings::switch_dangers({guard(0, true, {})}).empty());
}

TEST_CASE("switch dangers: a gate that shuts a run, judged") {
  auto const design = draw({{"XXXXXXXXX"}, {"wi.a..A.X"}, {"...a....X"}});
  auto const judgement = judge(design);
  for (auto kind : {FindingKind::crushing_switch, FindingKind::stranding_switch}) {
    auto const& finding = only(judgement, kind);
    CHECK(finding.event == 0u);
    CHECK(finding.rows == ~logic::RowSet::where_on(2, 0));
    CHECK(finding.ticks == 5 * 19);
    REQUIRE(finding.examples.size() == 1);
    CHECK(finding.examples[0].flips.empty());
  }
  CHECK(places(design, only(judgement, FindingKind::crushing_switch)) ==
        std::vector<std::string>{"3 0 1"});
  CHECK_FALSE(has(judgement, FindingKind::misrouting_switch));
  CHECK_FALSE(has(judgement, FindingKind::spilling_switch));
}
