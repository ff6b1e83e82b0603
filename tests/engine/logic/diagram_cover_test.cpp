#include "engine/logic/diagram_cover.hpp"

#include <random>

#include "engine/contract.hpp"
#include "engine/logic/cover.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/diagram_of_rows.hpp"

using namespace leat;
using namespace leat::logic;
using Function = Diagram::Function;

namespace {

constexpr std::size_t plenty = 1 << 20, any_number = 1 << 20;

Product product_of(Cube const& cube) {
  Product product;
  for (std::uint32_t i = 0; i < 32; ++i) {
    if ((cube.care >> i & 1u) != 0) product.push_back({i, (cube.value >> i & 1u) != 0});
  }
  return product;
}

// The pairs 0 1, 2 3, ... of variables, both on in one of them.
Function some_pair(Diagram& diagram, unsigned pairs) {
  auto sum = Diagram::never;
  for (auto i = pairs; i-- > 0;)
    sum = diagram.either(diagram.both(diagram.variable(2 * i), diagram.variable(2 * i + 1)), sum);
  return sum;
}

}  // namespace

// Oracle: the cover of packed rows, which knows nothing of diagrams.
TEST_CASE("law: the products of a diagram are the cubes of its rows") {
  std::mt19937 dice(3);
  for (int trial = 0; trial < 200; ++trial) {
    auto const inputs = static_cast<int>(dice() % 9);
    auto const needed = drawn::random_rows(inputs, dice, 3);
    auto const allowed = needed | drawn::random_rows(inputs, dice, 2);
    Diagram diagram(plenty);
    auto const f = drawn::diagram_of(diagram, needed), g = drawn::diagram_of(diagram, allowed);
    auto const products = irredundant_cover(diagram, f, g, any_number);
    REQUIRE(products);
    std::vector<Product> expected;
    for (auto const& cube : irredundant_cover(needed, allowed))
      expected.push_back(product_of(cube));
    INFO("trial " << trial);
    REQUIRE(*products == expected);
    auto const sum = function_of(diagram, *products);
    CHECK(diagram.both(f, !sum) == Diagram::never);
    CHECK(diagram.both(sum, !g) == Diagram::never);
  }
}

TEST_CASE("hundreds of variables: one product for each pair, and the function comes back") {
  Diagram diagram(plenty);
  auto const f = some_pair(diagram, 300);
  auto const products = irredundant_cover(diagram, f, f, 300);
  REQUIRE(products);
  CHECK(products->size() == 300);
  CHECK(function_of(diagram, *products) == f);
  // Not in any pair: 2^300 products, which the bound refuses.
  CHECK_FALSE(irredundant_cover(diagram, !f, !f, 100'000));
}

TEST_CASE("what is free makes products shorter") {
  Diagram diagram(plenty);
  auto const a = diagram.variable(7), b = diagram.variable(400);
  auto const products = irredundant_cover(diagram, diagram.both(a, b), a, any_number);
  CHECK(products == std::vector<Product>{{{7, true}}});
}

TEST_CASE("never is no product, always one without literals") {
  Diagram diagram(plenty);
  CHECK(irredundant_cover(diagram, Diagram::never, Diagram::never, 0) == std::vector<Product>{});
  CHECK(irredundant_cover(diagram, Diagram::always, Diagram::always, 1) ==
        std::vector<Product>{Product{}});
  CHECK_FALSE(irredundant_cover(diagram, Diagram::always, Diagram::always, 0));
  CHECK(function_of(diagram, {}) == Diagram::never);
  CHECK(function_of(diagram, {Product{}}) == Diagram::always);
}

TEST_CASE("the bound is the number of products, to the last one") {
  Diagram diagram(plenty);
  auto const f = some_pair(diagram, 20);
  CHECK(irredundant_cover(diagram, f, f, 20));
  CHECK_FALSE(irredundant_cover(diagram, f, f, 19));
}

TEST_CASE("finding products leaves the diagram as it is") {
  std::mt19937 dice(4);
  auto const needed = drawn::random_rows(10, dice, 3);
  auto const allowed = needed | drawn::random_rows(10, dice, 3);
  Diagram diagram(plenty);
  auto const f = drawn::diagram_of(diagram, needed), g = drawn::diagram_of(diagram, allowed);
  auto const nodes = diagram.node_count();
  CHECK(irredundant_cover(diagram, f, g, any_number));
  CHECK(diagram.node_count() == nodes);
}

TEST_CASE("a sum that takes too many nodes to find is not found") {
  std::mt19937 dice(5);
  Diagram diagram(plenty);
  auto const f = drawn::diagram_of(diagram, drawn::random_rows(20, dice, 2));
  REQUIRE(diagram.size(f) < (std::size_t{1} << 18));
  CHECK_FALSE(irredundant_cover(diagram, f, f, any_number));
}

TEST_CASE("a sum over more variables than are followed down is not found") {
  Diagram diagram(std::size_t{1} << 20);
  auto all = Diagram::always, none = Diagram::always;
  for (Diagram::Level i = Diagram::most_depth; i-- > 1;) {
    all = diagram.node(i, Diagram::never, all);
    none = diagram.node(i, none, Diagram::never);
  }
  auto const either = diagram.node(0, all, none);
  CHECK_FALSE(irredundant_cover(diagram, either, either, 100));
  CHECK(irredundant_cover(diagram, all, all, 100)->front().size() == Diagram::most_depth - 1);
}

TEST_CASE("what is needed but not allowed is misuse") {
  Diagram diagram(plenty);
  CHECK_THROWS_AS(irredundant_cover(diagram, Diagram::always, diagram.variable(0), 1),
                  leat::ContractBroken);
}
