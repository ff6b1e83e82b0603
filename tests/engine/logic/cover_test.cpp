#include "engine/logic/cover.hpp"

#include <random>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::logic;

namespace {

RowSet rows_from_bits(int inputs, unsigned bits) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if ((bits >> row & 1u) != 0) rows.insert(row);
  }
  return rows;
}

bool lies_within(RowSet const& inner, RowSet const& outer) { return (inner & ~outer).is_empty(); }

bool every_cube_is_prime(std::vector<Cube> const& cubes, RowSet const& allowed) {
  for (auto const& cube : cubes) {
    for (int i = 0; i < allowed.inputs(); ++i) {
      auto const bit = std::uint32_t{1} << i;
      if ((cube.care & bit) == 0) continue;
      Cube const wider{cube.care & ~bit, cube.value & ~bit};
      if (lies_within(rows_of({wider}, allowed.inputs()), allowed)) return false;
    }
  }
  return true;
}

bool no_cube_can_be_left_out(std::vector<Cube> const& cubes, RowSet const& needed) {
  for (std::size_t i = 0; i < cubes.size(); ++i) {
    auto fewer = cubes;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
    if (lies_within(needed, rows_of(fewer, needed.inputs()))) return false;
  }
  return true;
}

void require_laws(RowSet const& needed, RowSet const& allowed) {
  auto const cubes = irredundant_cover(needed, allowed);
  auto const rows = rows_of(cubes, needed.inputs());
  REQUIRE(lies_within(needed, rows));
  REQUIRE(lies_within(rows, allowed));
  REQUIRE(every_cube_is_prime(cubes, allowed));
  REQUIRE(no_cube_can_be_left_out(cubes, needed));
}

}  // namespace

TEST_CASE(
    "cover: between needed and allowed, prime and irredundant, for every function of 3 inputs") {
  for (unsigned allowed = 0; allowed < 256; ++allowed) {
    for (unsigned left_out = 0; left_out < 256; ++left_out) {
      if ((left_out & ~allowed) != 0) continue;
      require_laws(rows_from_bits(3, allowed & ~left_out), rows_from_bits(3, allowed));
    }
  }
}

TEST_CASE("cover: the same laws for random functions of 10 inputs") {
  std::mt19937 dice(7);
  for (unsigned sparse = 2; sparse < 8; ++sparse) {
    RowSet needed(10), allowed(10);
    for (Row row = 0; row < needed.row_count(); ++row) {
      if (dice() % sparse == 0) needed.insert(row);
      if (dice() % 3 == 0) allowed.insert(row);
    }
    require_laws(needed, needed | allowed);
    require_laws(needed, needed);
  }
}

TEST_CASE("cover: nothing is no cube, everything one cube without literals") {
  CHECK(irredundant_cover(RowSet(4), RowSet(4)).empty());
  CHECK(irredundant_cover(RowSet(4), RowSet(4, true)).empty());
  CHECK(irredundant_cover(RowSet(4, true), RowSet(4, true)) == std::vector{Cube{}});
  CHECK(irredundant_cover(RowSet(0, true), RowSet(0, true)) == std::vector{Cube{}});
}

TEST_CASE("cover: the textbook conditions come out as one would write them") {
  auto const first = RowSet::where_on(3, 0), second = RowSet::where_on(3, 1);
  auto const third = RowSet::where_on(3, 2);
  CHECK(irredundant_cover(first & ~second, first & ~second) == std::vector{Cube{3, 1}});
  auto const either = first | third;
  CHECK(irredundant_cover(either, either) == std::vector{Cube{1, 1}, Cube{4, 4}});
  CHECK(irredundant_cover(first ^ third, first ^ third).size() == 2);
  auto const majority = (first & second) | (second & third) | (first & third);
  CHECK(irredundant_cover(majority, majority).size() == 3);
}

TEST_CASE("cover: rows that are free make the condition wider") {
  auto const first = RowSet::where_on(2, 0), second = RowSet::where_on(2, 1);
  CHECK(irredundant_cover(first & second, first) == std::vector{Cube{1, 1}});
}

TEST_CASE("cover: rows that are needed but not allowed are misuse") {
  CHECK_THROWS_AS(irredundant_cover(RowSet(2, true), RowSet(2)), leat::ContractBroken);
}
