#include "engine/building/needs.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;

namespace {

std::size_t needed(model::Design const& design, building::Needs const& needs, int z,
                   model::MaterialId material) {
  std::size_t count = 0;
  for (model::FillId f = 0; f < design.fills.size(); ++f) {
    if (!design.fills[f].is_switched() && design.fills[f].powered == material)
      count += needs.needed[static_cast<std::size_t>(z)][f];
  }
  return count;
}

}  // namespace

TEST_CASE("of the rock that is drawn only what touches a channel is needed") {
  auto const design = drawn::draw({{"XXXXX", "XX.XX", "XXXXX"}});
  auto const needs = building::needs_of(design);
  CHECK(needed(design, needs, 0, model::material::rock) == 4);
  CHECK(needed(design, needs, 0, model::material::open) == 1);
  auto const& grid = design.grid;
  CHECK(building::is_needed(design, grid.cell({1, 1, 0})));
  CHECK_FALSE(building::is_needed(design, grid.cell({1, 0, 0})));
  CHECK(needs.around == std::vector<std::size_t>{1, 0, 1});
}

TEST_CASE("what holds a channel at the edge lies around the drawing") {
  auto const design = drawn::draw({{"...", "..."}, {"...", "..."}});
  auto const needs = building::needs_of(design);
  CHECK(needs.around == std::vector<std::size_t>{6, 10, 10, 6});
}

TEST_CASE("an open outside needs nothing around") {
  auto design = drawn::draw({{"..."}});
  design.outside_is_open = true;
  CHECK(building::needs_of(design).around == std::vector<std::size_t>{0, 0, 0});
}

TEST_CASE("a switched cell is needed wherever it stands, and so is the rock beside it") {
  auto const design = drawn::draw({{"XXXX", "XaXX", "XXXX"}});
  CHECK(building::is_needed(design, design.grid.cell({1, 1, 0})));
  CHECK(building::is_needed(design, design.grid.cell({2, 1, 0})));
  CHECK_FALSE(building::is_needed(design, design.grid.cell({3, 1, 0})));
}

TEST_CASE("parts are the inputs and memory that switched cells follow from") {
  auto design = drawn::draw({{"wi.a..A"}});
  CHECK(building::parts_of(design) == std::vector<model::SignalId>{0});
  CHECK(building::parts_of(drawn::draw({{"wi....A"}})).empty());
}
