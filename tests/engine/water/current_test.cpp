#include "engine/water/current.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {
// The current at the middle of three cells, with rock or holes below.
water::Current middle(std::string const& row, std::string const& below = "XXX") {
  Poured const poured({{below}, {row}});
  return water::current_at(poured.now(), poured.at({1, 0, 1}));
}
}  // namespace

TEST_CASE("the current sums a - a(n) times the side over wet neighbours") {
  CHECK(middle("765") == water::Current{2, 0});
  CHECK(middle("567") == water::Current{-2, 0});
  CHECK(middle("S7S") == water::Current{0, 0});
  CHECK(middle("F76") == water::Current{2, 0});
  Poured const bend({{"XXX", "XXX"}, {"X7X", "X65"}});
  CHECK(water::current_at(bend.now(), bend.at({1, 1, 1})) == water::Current{1, 1});
}

TEST_CASE("a dry neighbour counts nothing, nor does a wall") {
  CHECK(middle("76.") == water::Current{1, 0});
  CHECK(middle("76X") == water::Current{1, 0});
  CHECK(middle("X6X") == water::Current{0, 0});
}

TEST_CASE("through a dry neighbour that shows the slope the water below it counts, plus 8") {
  CHECK(middle("76.", "XXF") == water::Current{1 + 6 - 8 + 8, 0});
  CHECK(middle("76.", "XX3") == water::Current{1 + 6 - 3 + 8, 0});
  CHECK(middle("76.", "XXS") == water::Current{1 + 6, 0});
  CHECK(middle(".6X", "2XX") == water::Current{-(6 - 2 + 8), 0});
}

TEST_CASE("the gradient looks not through signs and plates, and not past wet neighbours") {
  CHECK(middle("76s", "XX3") == water::Current{1, 0});
  CHECK(middle("76p", "XX3") == water::Current{1, 0});
  CHECK(middle("765", "XX3") == water::Current{2, 0});
}

TEST_CASE("no current where it is dry") { CHECK(middle("7.5", "X3X") == water::Current{}); }

TEST_CASE("currents are strongest where the model says, on a settled run") {
  auto const design = draw({{"XXXXXXXXX"}, {"w........"}});
  auto const solved = settled(design);
  water::Moment const now{solved.arrangement, solved.field};
  auto const& grid = solved.arrangement.grid();
  CHECK(water::current_at(now, grid.cell({0, 0, 1})) == water::Current{1, 0});
  for (int x = 1; x < 7; ++x) CHECK(water::current_at(now, grid.cell({x, 0, 1})).x == 2);
  CHECK(water::current_at(now, grid.cell({7, 0, 1})) == water::Current{1, 0});
}
