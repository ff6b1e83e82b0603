#include "engine/model/grid.hpp"

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::model;

TEST_CASE("a cell and its place name each other, rim included") {
  Grid const grid(4, 3, 2);
  for (int z = -1; z < 4; ++z) {
    for (int y = -1; y < 5; ++y) {
      for (int x = -1; x < 6; ++x) {
        auto const c = grid.cell({x, y, z});
        REQUIRE(c < grid.size());
        REQUIRE(grid.place(c) == Place{x, y, z});
      }
    }
  }
}

TEST_CASE("neighbours lie where x is east, y south and z up") {
  Grid const grid(4, 3, 2);
  auto const c = grid.cell({1, 1, 0});
  CHECK(grid.place(grid.beside(c, Side::east)) == Place{2, 1, 0});
  CHECK(grid.place(grid.beside(c, Side::south)) == Place{1, 2, 0});
  CHECK(grid.place(grid.beside(c, Side::west)) == Place{0, 1, 0});
  CHECK(grid.place(grid.beside(c, Side::north)) == Place{1, 0, 0});
  CHECK(grid.place(grid.above(c)) == Place{1, 1, 1});
  CHECK(grid.place(grid.below(c)) == Place{1, 1, -1});
  CHECK(grid.raised(c, 2) == grid.above(grid.above(c)));
  CHECK(grid.raised(c, -1) == grid.below(c));
}

TEST_CASE("cells inside are counted without the rim") {
  Grid const grid(4, 3, 2);
  std::size_t inside = 0;
  for (Cell c = 0; c < grid.size(); ++c) inside += grid.is_inside(c) ? 1u : 0u;
  CHECK(inside == 24);
  CHECK(grid.volume() == 24);
}

TEST_CASE("an empty extent and a place beyond the rim are misuse") {
  CHECK_THROWS_AS(Grid(0, 1, 1), leat::ContractBroken);
  CHECK_THROWS_AS(Grid(100000, 100000, 10), leat::ContractBroken);
  CHECK_THROWS_AS(Grid(2, 2, 2).cell({-2, 0, 0}), leat::ContractBroken);
  CHECK_THROWS_AS(Grid(2, 2, 2).cell({0, 4, 0}), leat::ContractBroken);
}

TEST_CASE("a divisor divides as division does, at the edges of the cell ids and between") {
  for (std::uint32_t by : {2u, 3u, 4u, 7u, 1027u, 65536u, 1054729u, 4294967291u, 4294967295u}) {
    Divisor const divisor(by);
    for (std::uint32_t n : {0u, 1u, by - 1, by, by + 1, 2 * by - 1, 4294967294u, 4294967295u}) {
      CAPTURE(by, n);
      CHECK(divisor.quotient(n) == n / by);
      CHECK(divisor.remainder(n) == n % by);
    }
    for (std::uint32_t n = 1; n < 4000000000u; n += 39916801u) {
      CHECK(divisor.quotient(n / by * by) == n / by);
      CHECK(divisor.quotient(n / by * by + by - 1) == (n / by * by + by - 1) / by);
    }
  }
}
