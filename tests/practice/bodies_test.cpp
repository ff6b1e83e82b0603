#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;
using model::FindingKind;

namespace {

// A channel under a roof with the water at head level, on signs, over `length` cells.
model::Design head_run(std::size_t length) {
  std::string const width(length + 2, 'X');
  std::string signs(length + 2, 's'), water(length + 2, '.');
  signs.front() = 'X';
  signs.back() = 'A';
  water.front() = 'w';
  auto design = draw({{width}, {signs}, {water}, {width}});
  design.inlets = {{{design.grid.cell({1, 0, 1})}}};
  return design;
}

// A lift over a sign: `sources` sources from head level on.
model::Design lift(std::size_t sources) {
  std::vector<Level> levels{{"X"}, {"s"}};
  levels.insert(levels.end(), sources, {"w"});
  levels.insert(levels.end(), 2, {"."});
  auto design = draw(levels);
  design.inlets = {{{design.grid.cell({0, 0, 1})}}};
  design.outlets = {{{design.grid.cell({0, 0, static_cast<int>(sources) + 1})}}};
  return design;
}

}  // namespace

// Common practice, no source: three cells are the longest fall that harms nothing.
TEST_CASE("practice: a drop of three cells is safe, of four it is not") {
  CHECK_FALSE(has(judge(shaft(3, 2)), FindingKind::hard_landing));
  CHECK(has(judge(shaft(4, 2)), FindingKind::hard_landing));
}

// Common practice, no source: under a longer drop two cells of water are needed, three are advised.
TEST_CASE("practice: a cushion of two is needed, of three advised") {
  auto const severity = [](int water) {
    return only(judge(shaft(5 + water, 2, water)), FindingKind::thin_cushion).severity;
  };
  CHECK(severity(1) == model::Severity::warning);
  CHECK(severity(2) == model::Severity::note);
  CHECK_FALSE(has(judge(shaft(8, 2, 3)), FindingKind::thin_cushion));
}

// Common practice, no source: a pit under a long drop is two wide along the way the body comes.
TEST_CASE("practice: a pit is two wide, for a body drifts one cell on as it falls") {
  CHECK(has(judge(shaft(6, 1)), FindingKind::narrow_pit));
  auto const design = shaft(6, 2);
  auto const judgement = judge(design);
  CHECK_FALSE(has(judgement, FindingKind::narrow_pit));
  auto const& landing = only(judgement, FindingKind::hard_landing);
  CHECK(places(design, landing) == std::vector<std::string>{"2 0 1", "3 0 1"});
}

// Common practice, no source: so a long drop ends in a pit two wide and three deep.
TEST_CASE("practice: a long drop into two by three cells of water is faultless") {
  auto const judgement = judge(shaft(12, 2, 3));
  for (auto kind : {FindingKind::hard_landing, FindingKind::thin_cushion, FindingKind::narrow_pit,
                    FindingKind::open_edge}) {
    CHECK_FALSE(has(judgement, kind));
  }
}

// Common practice, no source: at most two cells with the head under water, or it drowns.
TEST_CASE("practice: a head-level run of two is safe, of three it is not") {
  CHECK_FALSE(has(judge(head_run(2)), FindingKind::long_head_run));
  CHECK(has(judge(head_run(3)), FindingKind::long_head_run));
}

// Common practice, no source: one source in a lift, no more on top of it.
TEST_CASE("practice: one source in a lift") {
  CHECK_FALSE(has(judge(lift(1)), FindingKind::stacked_sources));
  CHECK(has(judge(lift(2)), FindingKind::stacked_sources));
}

// Common practice, no source: a lift starts at head level; at foot level a body may miss it.
TEST_CASE("practice: a lift at head level is sure, at foot level it is not") {
  CHECK(route(judge(lift(1))).verdict == body::Verdict::certain);
  auto foot = draw({{"XX"}, {"wi"}, {"Xs"}, {"Xw"}, {"X."}, {"X."}});
  foot.outlets = {{{foot.grid.cell({1, 0, 3})}}};
  auto const judgement = judge(foot);
  CHECK(route(judgement).verdict == body::Verdict::doubtful);
  CHECK(has(judgement, FindingKind::foot_lift));
}

// Common practice, no source: a corner at which the current runs diagonally clogs under volume.
TEST_CASE("practice: a bent corner has a diagonal current, a straight run has none") {
  auto const bent = draw({{"XXX", "XXX", "XXX"}, {"wi.", "XX.", "XXA"}, {"...", "XX.", "XX."}});
  CHECK(has(judge(bent), FindingKind::diagonal_current));
  CHECK_FALSE(has(judge(draw({{"XXXXX"}, {"wi..A"}, {"....."}})), FindingKind::diagonal_current));
}

// Common practice, no source: a sign ends a flow before a drop, so that a body falls out of the
// water.
TEST_CASE("practice: a sign at the end of a flow before a drop") {
  auto const design = shaft(4, 2);
  CHECK_FALSE(has(judge(design), FindingKind::open_edge));
  auto open = design;
  auto const edge = open.grid.cell({2, 0, 5});
  open.fill_of[edge] = open.fill_of[open.grid.above(edge)];
  CHECK(has(judge(open), FindingKind::open_edge));
}

// From memory: swimmers appear in sixteen joined cells of still water; common practice that they
// clog.
TEST_CASE("practice: sixteen cells of still water are a pool") {
  CHECK(has(judge(draw({{"XXXXXXXX"}, {"wwwwwwww"}, {"wwwwwwww"}})), FindingKind::swimmer_pool));
  CHECK_FALSE(
      has(judge(draw({{"XXXXXXXX"}, {"wwwwwwww"}, {"Xwwwwwww"}})), FindingKind::swimmer_pool));
}
