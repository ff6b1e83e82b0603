#include "engine/works/islands.hpp"

#include <algorithm>

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
  CHECK(mirrored.copies[1].posture != works::Posture{});
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

namespace {

// Closed channels around each other; their walls are rock, or rock and another solid in turn.
model::Design channels(int width, bool has_other_walls) {
  auto design = drawn::draw({drawn::Level(static_cast<std::size_t>(width),
                                          std::string(static_cast<std::size_t>(width), '.'))});
  auto slab = model::built_in_materials[model::material::rock];
  slab.bears_sources = !slab.bears_sources;
  design.materials.push_back(slab);
  auto const other = static_cast<model::MaterialId>(design.materials.size() - 1);
  for (int y = 0; y < width; ++y) {
    for (int x = 0; x < width; ++x) {
      auto const depth = std::min({x, y, width - 1 - x, width - 1 - y});
      if (depth % 2 == 1) continue;
      auto const wall = has_other_walls && depth % 4 == 0 ? other : model::material::rock;
      drawn::put(design, {x, y, 0}, {wall, wall, std::nullopt});
    }
  }
  return design;
}

}  // namespace

TEST_CASE("islands: channels in each other take no more memory than the drawing") {
  for (bool has_other_walls : {false, true}) {
    auto const design = channels(120, has_other_walls);
    auto const found = works::islands_of(design);
    REQUIRE(found.parts.size() == 30);
    std::size_t runs = 0, cells = 0;
    for (auto const& part : found.parts) {
      CHECK(part.design.fill_of.empty());
      runs += part.runs.size();
      cells += part.drawn().grid.volume();
    }
    CHECK(runs < 2 * design.grid.volume());
    CHECK(cells > 8 * design.grid.volume());
  }
}

TEST_CASE("islands: of what is solid, what an island touches tells it from another, not the rest") {
  auto const parts_with = [](model::Place at) {
    auto design = rooms({"XXXXXXXXXXXXX", "XiXXXXXiXXXXX", "X...XXX...XXX", "XXXXXXXXXXXXX"});
    auto slab = design.materials[model::material::rock];
    slab.bears_sources = !slab.bears_sources;
    design.materials.push_back(slab);
    auto const other = static_cast<model::MaterialId>(design.materials.size() - 1);
    drawn::put(design, at, {other, other, std::nullopt});
    return works::islands_of(design).parts.size();
  };
  CHECK(parts_with({3, 1, 1}) == 2);  // beside a cell of the first room
  CHECK(parts_with({4, 3, 1}) == 2);  // over an edge
  CHECK(parts_with({3, 0, 1}) == 1);  // in its box, and not touched
}

TEST_CASE("islands: a part is drawn as it stands in the plant") {
  auto const design = rooms({"XXXXXXXXX", "XwaiXXaiX", "XXXXXXXwX", "XXXXXXXXX"});
  auto const found = works::islands_of(design);
  REQUIRE(found.parts.size() == 2);
  for (auto const& part : found.parts) {
    auto const own = part.drawn();
    auto const corner = found.copies[part.copies.front()].corner;
    for (model::Cell c = 0; c < own.grid.size(); ++c) {
      if (!own.grid.is_inside(c)) continue;
      auto const at = own.grid.place(c);
      auto const there = design.grid.cell({corner.x + at.x, corner.y + at.y, corner.z + at.z});
      auto const &mine = own.fills[own.fill_of[c]], &whole = design.fills[design.fill_of[there]];
      CHECK(mine.unpowered == whole.unpowered);
      CHECK(mine.powered == whole.powered);
    }
  }
}
