#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

TEST_CASE("unsure move: a route that hangs on a climb") {
  auto const design = draw({{"XXXX"}, {"wiXX"}, {"..A."}, {"...."}});
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::unsure_move)) == Places{"1 0 1"});
  CHECK(route(judgement).verdict == body::Verdict::doubtful);
  CHECK_FALSE(has(judgement, FindingKind::foot_lift));
  CHECK_FALSE(has(judge(draw({{"XXXX"}, {"wi.A"}, {"...."}, {"...."}})), FindingKind::unsure_move));
}

TEST_CASE("foot lift: a lift that starts with the water at foot level") {
  auto design = draw({{"XX"}, {"wi"}, {"Xs"}, {"Xw"}, {"X."}, {"X."}});
  design.outlets = {{{design.grid.cell({1, 0, 3})}}};
  auto const judgement = judge(design);
  CHECK(places(design, only(judgement, FindingKind::foot_lift)) == Places{"1 0 1"});
  CHECK_FALSE(has(judgement, FindingKind::unsure_move));
  CHECK(route(judgement).verdict == body::Verdict::doubtful);
}

TEST_CASE("no foot lift: with the first water at head level the rise is sure") {
  auto design = draw({{"XX"}, {"Xs"}, {"Xw"}, {"X."}, {"X."}});
  design.inlets = {{{design.grid.cell({1, 0, 1})}}};
  design.outlets = {{{design.grid.cell({1, 0, 2})}}};
  auto const judgement = judge(design);
  CHECK(route(judgement).verdict == body::Verdict::certain);
  CHECK_FALSE(has(judgement, FindingKind::foot_lift));
}
