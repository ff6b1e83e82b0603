#include "engine/water/settle.hpp"

#include "engine/water/step.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;

TEST_CASE("settled: a step changes nothing, and the steps before it are counted") {
  auto const design = draw({{"XXXXXXXXXXXX"}, {"w..........."}});
  model::Arrangement const arrangement(design, std::vector<bool>(design.fills.size(), false));
  for (auto const& settled :
       {water::settle_reference(arrangement), water::settle_fresh(arrangement)}) {
    CHECK(water::step(arrangement, settled.field) == settled.field);
    CHECK(settled.steps == 8);  // the source appears, then one cell a step
  }
}

TEST_CASE("a design without water settles at once") {
  auto const design = draw({{"XXX"}, {"..."}});
  model::Arrangement const arrangement(design, std::vector<bool>(design.fills.size(), false));
  CHECK(water::settle_reference(arrangement).steps == 0);
  CHECK(water::settle_fresh(arrangement).steps == 0);
}

TEST_CASE("on an open floor water runs as far as its strength in every way") {
  auto const water = water_of({{"XXXXX", "XXXXX", "XXXXX"}, {".....", "..w..", "....."}});
  CHECK(water[1] == Level{"56765", "67S76", "56765"});
}

TEST_CASE("two sources with one cell between form a third; with two they do not") {
  CHECK(water_of({{"XXX"}, {"w.w"}})[1] == Level{"SSS"});
  CHECK(water_of({{"XXXX"}, {"w..w"}})[1] == Level{"S77S"});
}

TEST_CASE("formed sources make further ones: from two corners of a square, from a diagonal") {
  CHECK(water_of({{"XX", "XX"}, {"w.", ".w"}})[1] == Level{"SS", "SS"});
  CHECK(water_of({{"XXX", "XXX", "XXX"}, {"w..", ".w.", "..w"}})[1] == Level{"SSS", "SSS", "SSS"});
}

TEST_CASE("water over a hole goes down only, and what falls spreads again at the bottom") {
  auto const water = water_of({{"XXXXXX"}, {"......"}, {"XX.XXX"}, {"w....."}});
  CHECK(water[3] == Level{"S76..."});
  CHECK(water[2] == Level{"XXFXXX"});
  CHECK(water[1] == Level{"67F765"});
}

TEST_CASE("water seeks a hole within four steps of its sides, and spreads evenly past that") {
  CHECK(water_of({{"XXXXXXXXXX.XX"}, {".....w......."}})[1] == Level{".....S76543.."});
  CHECK(water_of({{"XXXXXXXXXXX.X"}, {".....w......."}})[1] == Level{"34567S765432."});
}

TEST_CASE("a source pours down first, and spreads once that is filled") {
  auto const water = water_of({{"XXXXX"}, {"XX.XX"}, {"..w.."}});
  CHECK(water[2] == Level{"67S76"});
  CHECK(water[1] == Level{"XXFXX"});
}

TEST_CASE("levers change what the water settles to") {
  CHECK(water_of({{"XXXX"}, {"v..."}}, {true, false})[1] == Level{"S765"});
  CHECK(water_of({{"XXXX"}, {"v..."}}, {false, false})[1] == Level{"...."});
  CHECK(water_of({{"XXXX"}, {"w.a."}}, {true, false})[1] == Level{"S7X."});
}
