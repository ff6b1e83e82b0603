#include "lang/render/picture/level_svg.hpp"

#include "lang/render/picture/overlays.hpp"
#include "lang/render/picture/sheet.hpp"
#include "lang/render/picture/symbols.hpp"
#include "tests/lang/render/render_test_support.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

std::size_t count(std::string const& text, std::string_view part) {
  std::size_t found = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) ++found;
  return found;
}

}  // namespace

TEST_CASE("a plane says which cell lies where in a level, a row and a column") {
  model::Grid const grid(5, 3, 2);
  Plane const level(grid, {Cut::Kind::level, 1}), row(grid, {Cut::Kind::row, 2}),
      column(grid, {Cut::Kind::column, 4});
  CHECK(level.place(3, 2) == model::Place{3, 2, 1});
  CHECK(row.place(3, 0) == model::Place{3, 2, 1});
  CHECK(row.place(3, 1) == model::Place{3, 2, 0});
  CHECK(column.place(0, 1) == model::Place{4, 0, 0});
  CHECK(row.down_number(0) == 1);
  for (auto const& plane : {level, row, column}) {
    for (int down = 0; down < plane.height(); ++down) {
      for (int across = 0; across < plane.width(); ++across)
        CHECK(plane.spot(plane.place(across, down)) == Plane::Spot{across, down});
    }
  }
  CHECK_FALSE(level.spot({3, 2, 0}));
  CHECK_THROWS(Plane(grid, {Cut::Kind::row, 3}));
}

TEST_CASE("currents point the same way in every cut") {
  model::Grid const grid(2, 2, 2);
  water::Current const south_east{3, 2};
  auto const level = Plane(grid, {Cut::Kind::level, 0}).drift(south_east);
  CHECK((level.right == 1 && level.down == 1 && level.nearer == 0));
  auto const row = Plane(grid, {Cut::Kind::row, 0}).drift(south_east);
  CHECK((row.right == 1 && row.down == 0 && row.nearer == 1));  // seen from the south
  auto const column = Plane(grid, {Cut::Kind::column, 0}).drift(south_east);
  CHECK((column.right == 1 && column.down == 0 && column.nearer == -1));  // seen from the west
}

TEST_CASE("each cell that is not ever solid is a group with its sign, its current and its words") {
  auto const yard = rendered::worded(drawn::draw({{"XXXX", "w..a"}}));
  auto const solved = drawn::settled(yard->design, {true, false});
  PictureScene const scene{yard->subject(),
                           &solved.arrangement,
                           water::survey(water::Moment{solved.arrangement, solved.field}),
                           "divert=on",
                           {},
                           {}};
  auto const svg = level_svg(scene, {Cut::Kind::level, 0});
  CHECK(count(svg, "class=\"cell\"") == 4);
  CHECK(
      svg.find("<g id=\"c1-1-0\" class=\"cell\" data-cell=\"1 1 0\" transform=\"translate(40 40)\">"
               "<title>level 0, row 1, column 1: open, a flow of strength 7, current east</title>"
               "<use class=\"ground\" href=\"#w-7\"/><use class=\"current\" href=\"#f-e\"/></g>") !=
      std::string::npos);
  CHECK(svg.find("switched: rock when divert else open</title><use class=\"ground\" href=\"#dry\"/>"
                 "<use class=\"stuff\" href=\"#m-0\"/><use class=\"switch\" href=\"#k-on\"/>") !=
        std::string::npos);
  CHECK(count(svg, "url(#hatch)") == 1);  // four cells of rock are one stretch
}

TEST_CASE("every sign that is used is defined, once") {
  auto const yard = rendered::worded(
      drawn::draw({{"wi.a..A", "s.p.vgw", "XXXXXXX"}, {".......", "w......", "XXXXXXX"}}));
  auto const solved = drawn::settled(yard->design);
  PictureScene const scene{yard->subject(),
                           &solved.arrangement,
                           water::survey(water::Moment{solved.arrangement, solved.field}),
                           "everything as built",
                           {},
                           {}};
  auto const svg = picture_svg({scene,
                                {{Cut::Kind::level, 1},
                                 {Cut::Kind::level, 0},
                                 {Cut::Kind::row, 1},
                                 {Cut::Kind::column, 3}}});
  std::size_t uses = 0;
  for (auto at = svg.find("href=\"#"); at != std::string::npos; at = svg.find("href=\"#", at + 1)) {
    auto const id = svg.substr(at + 7, svg.find('"', at + 7) - at - 7);
    INFO(id);
    CHECK(count(svg, " id=\"" + id + "\"") == 1);
    ++uses;
  }
  CHECK(uses > 40);
}

TEST_CASE("ways are lines of their inlet, with marks where they end or leave the cut") {
  auto const yard = rendered::worded(drawn::draw({{"i..A"}, {"...."}}));
  auto const solved = drawn::settled(yard->design);
  PictureScene scene{yard->subject(), &solved.arrangement, {}, "", {}, {}};
  scene.ways.push_back(
      {0, 0, {{{{{0, 0, 0}}, {{1, 0, 0}}, {{2, 0, 0}}, {{2, 0, 1}}}, WayEnd::rests}}});
  auto const low = ways(scene, Plane(yard->design.grid, {Cut::Kind::level, 0}));
  CHECK(low.find("data-inlet=\"millhouse\"") != std::string::npos);
  CHECK(low.find("d=\"M20 20L100 20\"") != std::string::npos);  // one stretch
  auto const high = ways(scene, Plane(yard->design.grid, {Cut::Kind::level, 1}));
  CHECK(high.find("s-trail1") == std::string::npos);  // no line, only the square where it stays
  CHECK(high.find("f-trail1") != std::string::npos);
}

TEST_CASE("pins are numbered and framed, and severities differ in shape") {
  auto const yard = rendered::worded(drawn::draw({{"...."}}));
  auto const solved = drawn::settled(yard->design);
  auto const& grid = yard->design.grid;
  PictureScene scene{yard->subject(), &solved.arrangement, {}, "", {}, {}};
  scene.pins = {{1, model::Severity::error, {grid.cell({0, 0, 0}), grid.cell({1, 0, 0})}, "a < b"},
                {2, model::Severity::note, {grid.cell({0, 0, 0})}, "again"}};
  auto const svg = pins(scene, Plane(grid, {Cut::Kind::level, 0}));
  CHECK(count(svg, "class=\"pin\"") == 2);
  CHECK(svg.find("<title>error: a &lt; b</title>") != std::string::npos);
  CHECK(svg.find("M4 4H40M4 36H40M4 4V36M40 4H76") != std::string::npos);  // around both cells
  CHECK(pin_shape(scene.pins[0]) != pin_shape(scene.pins[1]));
}
