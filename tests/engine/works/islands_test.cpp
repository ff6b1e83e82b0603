#include "engine/works/islands.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;

namespace {

// A dead end with a gate in it, as it stands in each of the drawings below.
model::Design rooms(std::vector<std::string> const& rows) {
  return drawn::draw({drawn::Level(rows.size(), std::string(rows.front().size(), 'X')), rows,
                      drawn::Level(rows.size(), std::string(rows.front().size(), 'X'))});
}

}  // namespace

TEST_CASE("islands: rock between two rooms makes two, and alike ones are one part") {
  auto const found = works::islands_of(rooms({"XXXXXXXXXXX", "XwaiXXXwaiX", "XXXXXXXXXXX"}));
  REQUIRE(found.copies.size() == 2);
  CHECK(found.parts.size() == 1);
  CHECK(found.copies[0].inlets == std::vector<model::InletId>{0});
  CHECK(found.copies[1].inlets == std::vector<model::InletId>{0});
  CHECK(found.copies[1].corner.x - found.copies[0].corner.x == 6);
}

TEST_CASE("islands: the eight postures of one room are one part") {
  auto const found = works::islands_of(
      rooms({"XXXXXXXXXXXXX", "XwaiXXiXXXXXX", "XXX.XXa..iawX", "XXXXXXwXXX.XX", "XXXXXXXXXXXXX"}));
  auto const mirrored =
      works::islands_of(rooms({"XXXXXXXXXXX", "XwaiXXXiawX", "XX.XXXXX.XX", "XXXXXXXXXXX"}));
  CHECK(mirrored.copies.size() == 2);
  CHECK(mirrored.parts.size() == 1);
  CHECK(mirrored.copies[1].is_turned);
  CHECK(found.copies.size() >= 2);
}

TEST_CASE("islands: another gate, another material or another port is another part") {
  CHECK(works::islands_of(rooms({"XXXXXXXXXXX", "XwaiXXXwbiX", "XXXXXXXXXXX"})).parts.size() == 2);
  CHECK(works::islands_of(rooms({"XXXXXXXXXXX", "XwaiXXXwsiX", "XXXXXXXXXXX"})).parts.size() == 2);
  CHECK(works::islands_of(rooms({"XXXXXXXXXXX", "XwaiXXXwaAX", "XXXXXXXXXXX"})).parts.size() == 2);
}

TEST_CASE("islands: the same gate on another lever is the same part with another signal") {
  auto const found = works::islands_of(rooms({"XXXXXXXXXXX", "XwaiXXXwciX", "XXXXXXXXXXX"}));
  REQUIRE(found.parts.size() == 1);
  REQUIRE(found.copies.size() == 2);
  CHECK(found.copies[0].signals == std::vector<model::SignalId>{0});
  CHECK(found.copies[1].signals == std::vector<model::SignalId>{1});
  CHECK(found.parts[0].design.circuit.signals.size() == 1);
}

TEST_CASE("islands: a gate that opens between two rooms makes them one") {
  CHECK(works::islands_of(rooms({"XXXXXXX", "XwiaiwX", "XXXXXXX"})).copies.size() == 1);
  CHECK(works::islands_of(rooms({"XXXXXXX", "XwiXiwX", "XXXXXXX"})).copies.size() == 2);
}

TEST_CASE("islands: where a room lies in the drawing does not matter, its edge neither") {
  auto const found = works::islands_of(rooms({"waiXXXX", "XXXXXXX", "XXXwaiX", "XXXXXXX"}));
  CHECK(found.copies.size() == 2);
  CHECK(found.parts.size() == 1);
}
