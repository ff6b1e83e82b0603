#include "lang/render/level_picture.hpp"

#include "lang/render/field_text.hpp"
#include "lang/render/water_signs.hpp"
#include "tests/lang/render/render_test_support.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

water::WetCell wet(water::State state, int strength, water::Current current,
                   bool is_placed = false) {
  return {0, state, is_placed, strength, current, false};
}

}  // namespace

TEST_CASE("the signs of a wet cell say its water and its current") {
  Look const plain{false, true}, arrows{};
  CHECK(water_sign(wet(6, 6, {8, 0}), arrows) == "6→");
  CHECK(water_sign(wet(6, 6, {8, 0}), plain) == "6>");
  CHECK(water_sign(wet(water::falling, 8, {0, -1}), plain) == "F^");
  CHECK(water_sign(wet(water::source, 8, {}, true), plain) == "S.");
  CHECK(water_sign(wet(water::source, 8, {-1, 0}), plain) == "G<");
  CHECK(water_sign(wet(3, 3, {1, 1}), arrows) == "3↘");
  CHECK(water_words(wet(6, 6, {8, 0})) == "a flow of strength 6, current east");
  CHECK(water_words(wet(water::source, 8, {})) == "a formed source, still");
}

TEST_CASE("a level is drawn with rulers, its water, and brackets around what is spoken of") {
  auto const yard = rendered::worded(drawn::draw({{"XXXX", "w..A"}}));
  auto const solved = drawn::settled(yard->design);
  Scene const scene{yard->subject(), &solved.arrangement,
                    water::survey(water::Moment{solved.arrangement, solved.field})};
  auto const& grid = yard->design.grid;
  std::vector<model::Cell> const marked{grid.cell({1, 1, 0}), grid.cell({2, 1, 0})};
  auto const rock = yard->map.fills[yard->design.fill_of[grid.cell({0, 0, 0})]].name;
  auto const cells = rock + "  " + rock + "  " + rock + "  " + rock;
  CHECK(level_picture(scene, 0, whole(grid), marked, {{false, true}, 0}) ==
        "    0  1  2  3\n0   " + cells + "\n1   S>[7> 6>]5>\n");
}

TEST_CASE("a window is cut off at the drawing's edge") {
  auto const yard = rendered::worded(drawn::draw({{"w.......", "........"}}));
  auto const& grid = yard->design.grid;
  auto const window = around(grid, {grid.cell({1, 1, 0})}, 0, 3);
  CHECK(window == Window{0, 5, 0, 2});
  CHECK(level_heading(grid, 0, window) == "level 0, rows 0 to 1, columns 0 to 4");
  CHECK(level_heading(grid, 0, whole(grid)) == "level 0");
}
