#include "engine/water/step.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {
// The row `y` of the highest level after one step.
std::string stepped(std::vector<Level> const& levels, int y = 0) {
  Poured const poured(levels);
  Solved const after{poured.arrangement, water::step(poured.arrangement, poured.field)};
  return water_row(after, y, static_cast<int>(levels.size()) - 1);
}
}  // namespace

TEST_CASE("placed water is a source from the first step") {
  auto const design = draw({{"XXX"}, {"w.."}});
  model::Arrangement const arrangement(design, std::vector<bool>(design.fills.size(), false));
  Solved const after{arrangement, water::step(arrangement, water::dry_field(arrangement))};
  CHECK(water_row(after, 0, 1) == "S..");
}

TEST_CASE("a formed source stays a source though nothing supports it") {
  CHECK(stepped({{"XXX"}, {".S."}}) == "7S7");
  CHECK(stepped({{"X.X"}, {"XSX"}}) == "XSX");
}

TEST_CASE("a wet cell becomes intrinsic, though its support would not newly spread here") {
  CHECK(stepped({{"X.XX"}, {"w76."}}) == "S76.");  // the 7 over the hole goes on supporting
  CHECK(stepped({{"X.XX"}, {"w6.."}}) == "S7..");  // but offers nothing new
  CHECK(stepped({{"XXX"}, {"F.."}, {"6.X"}}) == "..X");
}

TEST_CASE("a wet cell without support falls dry, a flow one step after the other") {
  CHECK(stepped({{"XXXX"}, {".543"}}) == "4343");
  CHECK(stepped({{"XXX"}, {"X2X"}}) == "X.X");
  CHECK(stepped({{"XXX"}, {"XFX"}}) == "X.X");
}

TEST_CASE("a dry cell under a wet one takes falling water without any offer") {
  CHECK(stepped({{"X.X"}, {"X1X"}}) == "X.X");
  Poured const poured({{"X.X"}, {"X1X"}});
  Solved const after{poured.arrangement, water::step(poured.arrangement, poured.field)};
  CHECK(water_row(after, 0, 0) == "XFX");
}

TEST_CASE("a dry cell is entered from a side of strength at least 2 that offers it") {
  CHECK(stepped({{"XXX"}, {"2.X"}})[1] == '1');
  CHECK(stepped({{"XXX"}, {"1.X"}})[1] == '.');
  CHECK(stepped({{".XX"}, {"7.X"}})[1] == '.');          // over a hole it only goes down
  CHECK(stepped({{"XXXX.X"}, {"..S..."}}) == "..S7..");  // the hole to the east is preferred
}

TEST_CASE("a newly wet cell takes its intrinsic state, not one from the side that offered it") {
  CHECK(stepped({{"XXX"}, {"3.S"}}) == ".7S");
  CHECK(stepped({{"XXX"}, {"S.S"}}) == "SSS");
  CHECK(stepped({{"X.XXX"}, {"X7.3X"}}) == "X.6.X");  // offered by the 3, but the 7 stands beside
}

TEST_CASE("all cells update together from the field before") {
  CHECK(stepped({{"XXXXX"}, {"w...."}}) == "S7...");
  CHECK(stepped({{"XXXXX"}, {"w7..."}}) == "S76..");
}

TEST_CASE("the rim stays dry") {
  Poured poured({{"."}});
  open_the_outside(poured.design);
  poured.arrangement = {poured.design, std::vector<bool>(poured.design.fills.size(), false)};
  poured.field[poured.at({0, 0, 0})] = water::source;
  auto const after = water::step(poured.arrangement, poured.field);
  CHECK(std::count(after.begin(), after.end(), water::dry) ==
        static_cast<std::ptrdiff_t>(after.size()) - 1);
}
