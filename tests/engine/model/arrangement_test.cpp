#include "engine/model/arrangement.hpp"

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
namespace material = leat::model::material;

namespace {
model::MaterialId made_of(model::Design const& design, std::vector<bool> levers, int x) {
  return drawn::settled(design, levers).arrangement.material_of(design.grid.cell({x, 0, 0}));
}
}  // namespace

TEST_CASE("a switched cell has one material while its control is powered and another while not") {
  auto const design = drawn::draw({{"abv."}});
  CHECK(made_of(design, {false, false}, 0) == material::open);
  CHECK(made_of(design, {true, false}, 0) == material::rock);
  CHECK(made_of(design, {false, false}, 1) == material::rock);
  CHECK(made_of(design, {true, false}, 1) == material::open);
  CHECK(made_of(design, {false, false}, 2) == material::open);
  CHECK(made_of(design, {true, false}, 2) == material::water);
}

TEST_CASE("a cell without a control never changes, nor one whose control is another signal") {
  auto const design = drawn::draw({{".ac"}});
  CHECK(made_of(design, {false, false}, 0) == made_of(design, {true, true}, 0));
  CHECK(made_of(design, {false, true}, 1) == material::open);
  CHECK(made_of(design, {false, true}, 2) == material::rock);
}

TEST_CASE("cells outside the drawing are rock") {
  auto const design = drawn::draw({{"."}});
  auto const solved = drawn::settled(design);
  for (auto side : model::sides) {
    CHECK(solved.arrangement.material_of(design.grid.beside(design.grid.cell({0, 0, 0}), side)) ==
          material::rock);
  }
}

TEST_CASE("an arrangement wants one control value a fill") {
  auto const design = drawn::draw({{"."}});
  CHECK_THROWS_AS(model::Arrangement(design, {}), ContractBroken);
}
