#include "engine/logic/statement.hpp"

#include <bit>
#include <random>

#include "tests/support/catch.hpp"

using namespace leat::logic;

namespace {

RowSet stated(Statement const& statement, int inputs) {
  auto const rows = rows_of(statement.cubes, inputs);
  return statement.is_negated ? ~rows : rows;
}

RowSet random_rows(int inputs, std::mt19937& dice) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (dice() % 3 != 0) rows.insert(row);
  }
  return rows;
}

}  // namespace

TEST_CASE("a statement says its rows and no others, plainly or negated") {
  std::mt19937 dice(11);
  int negated = 0;
  for (int trial = 0; trial < 100; ++trial) {
    auto const rows = random_rows(4, dice);
    auto const statement = shortest_statement(rows, RowSet(rows.inputs(), true));
    REQUIRE(stated(statement, 4) == rows);
    negated += statement.is_negated ? 1 : 0;
  }
  CHECK(negated > 10);
  CHECK(negated < 90);
}

TEST_CASE("the shorter statement is taken: not (a and b) rather than not a or not b") {
  auto const a = RowSet::where_on(2, 0), b = RowSet::where_on(2, 1);
  RowSet const all(2, true);
  CHECK(shortest_statement(a & b, all) == Statement{false, {Cube{3, 3}}});
  CHECK(shortest_statement(a, all) == Statement{false, {Cube{1, 1}}});
  auto const neither_both = shortest_statement(~(a & b), all);
  CHECK(neither_both == Statement{true, {Cube{3, 3}}});
}

TEST_CASE("always and never are stated plainly") {
  RowSet const all(3, true);
  CHECK(shortest_statement(RowSet(3), all) == Statement{false, {}});
  CHECK(shortest_statement(all, all) == Statement{false, {Cube{}}});
}

TEST_CASE("a statement is free where no row is reachable, and holds to the letter elsewhere") {
  std::mt19937 dice(13);
  int shorter = 0;
  for (int trial = 0; trial < 200; ++trial) {
    auto const reachable = random_rows(4, dice), rows = random_rows(4, dice) & reachable;
    if (rows.is_empty()) continue;
    auto const statement = shortest_statement(rows, reachable);
    REQUIRE((stated(statement, 4) & reachable) == rows);
    shorter += stated(statement, 4) == rows ? 0 : 1;
  }
  CHECK(shorter > 50);
  // Always, as far as anything is ever reached.
  auto const a = RowSet::where_on(2, 0);
  CHECK(shortest_statement(a, a) == Statement{false, {Cube{}}});
}

TEST_CASE("a statement of rows that are never reached is exact") {
  std::mt19937 dice(14);
  for (int trial = 0; trial < 100; ++trial) {
    auto const reachable = random_rows(4, dice);
    auto const rows = random_rows(4, dice) & ~reachable;
    REQUIRE(stated(shortest_statement(rows, reachable), 4) == rows);
  }
}

TEST_CASE("disjoint cubes hold the same rows, each once") {
  std::mt19937 dice(12);
  for (int trial = 0; trial < 100; ++trial) {
    auto const rows = random_rows(5, dice);
    auto const cubes = disjoint_cubes(irredundant_cover(rows, rows), 5);
    CHECK(rows_of(cubes, 5) == rows);
    std::size_t total = 0;
    for (auto const& cube : cubes) total += std::size_t{1} << (5 - std::popcount(cube.care));
    CHECK(total == rows.count());
  }
}
