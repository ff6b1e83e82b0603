#include "engine/findings/families.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;
using Places = std::vector<std::string>;

namespace {
// Water on signs at head level under a roof, over `length` cells.
model::Design head_run(int length) {
  auto const width = static_cast<std::size_t>(length) + 2;
  std::string const roof(width, 'X');
  std::string signs(width, 's'), water(width, '.');
  signs.front() = 'X';
  signs.back() = 'A';
  water.front() = 'w';
  auto design = draw({{roof}, {signs}, {water}, {roof}});
  design.inlets = {{{design.grid.cell({1, 0, 1})}}};
  return design;
}
}  // namespace

TEST_CASE("long head run: more than two cells with the head in water and no way up") {
  auto const design = head_run(3);
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::long_head_run);
  CHECK(places(design, finding) == Places{"1 0 1", "2 0 1", "3 0 1"});
  CHECK(finding.measured == 3);
  CHECK(finding.limit == 2);
  CHECK(route(judgement).verdict == body::Verdict::certain);
}

TEST_CASE("no long head run: two cells, a run at foot level, or a body that is no taller") {
  CHECK_FALSE(has(judge(head_run(2)), FindingKind::long_head_run));
  CHECK_FALSE(
      has(judge(draw({{"XXXXXXX"}, {"wi....A"}, {"......."}})), FindingKind::long_head_run));
  auto low = head_run(3);
  low.profiles = {{.footprint = 1, .height = 1}};
  CHECK_FALSE(has(judge(low), FindingKind::long_head_run));
}

TEST_CASE("long head run: where the current parts, the cells of all branches") {
  auto design =
      draw({{"XXXXX", "XXXXX"}, {"XsssX", "XXsXX"}, {"w...X", "XX.XX"}, {"XXXXX", "XXXXX"}});
  design.inlets = {{{design.grid.cell({1, 0, 1})}}};
  auto const judgement = judge(design);
  auto const& finding = only(judgement, FindingKind::long_head_run);
  CHECK(places(design, finding) == Places{"1 0 1", "2 0 1", "3 0 1", "2 1 1"});
  CHECK(finding.measured == 3);
}
