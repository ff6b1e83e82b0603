#include "engine/logic/statement.hpp"

#include <bit>
#include <map>
#include <random>

#include "tests/support/catch.hpp"

using namespace leat::logic;

using Form = Statement::Form;

namespace {

RowSet stated(Statement const& statement, int inputs) {
  if (statement.form == Form::product) return rows_of(statement.clauses, inputs);
  auto const rows = rows_of(statement.cubes, inputs);
  return statement.form == Form::negated_sum ? ~rows : rows;
}

RowSet random_rows(int inputs, std::mt19937& dice) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (dice() % 3 != 0) rows.insert(row);
  }
  return rows;
}

}  // namespace

TEST_CASE("a statement says its rows and no others: a sum, a negated one, a product") {
  std::mt19937 dice(11);
  std::map<Form, int> count;
  for (int trial = 0; trial < 100; ++trial) {
    auto const rows = random_rows(4, dice);
    auto const statement = shortest_statement(rows, RowSet(rows.inputs(), true));
    REQUIRE(stated(statement, 4) == rows);
    ++count[statement.form];
  }
  CHECK(count[Form::sum] > 10);
  CHECK(count[Form::negated_sum] > 10);
  CHECK(count[Form::product] > 3);
}

TEST_CASE("the shorter statement is taken: not (a and b) rather than not a or not b") {
  auto const a = RowSet::where_on(2, 0), b = RowSet::where_on(2, 1);
  RowSet const all(2, true);
  CHECK(shortest_statement(a & b, all) == Statement{Form::sum, {Cube{3, 3}}});
  CHECK(shortest_statement(a, all) == Statement{Form::sum, {Cube{1, 1}}});
  auto const neither_both = shortest_statement(~(a & b), all);
  CHECK(neither_both == Statement{Form::negated_sum, {Cube{3, 3}}});
}

TEST_CASE("a product of clauses is taken where it is shorter than both sums") {
  auto const on = [](int input) { return RowSet::where_on(4, input); };
  RowSet const all(4, true);
  auto const each_pair = (on(0) | on(1)) & (on(2) | on(3));
  CHECK(shortest_statement(each_pair, all).form == Form::product);
  CHECK(shortest_statement(each_pair, all).clauses.size() == 2);
  // As long as a sum: the sum is taken.
  CHECK(shortest_statement(on(0) & on(1), all).form == Form::sum);
  CHECK(shortest_statement(on(0) | on(1), all).form == Form::sum);
}

TEST_CASE("always and never are stated plainly") {
  RowSet const all(3, true);
  CHECK(shortest_statement(RowSet(3), all) == Statement{Form::sum, {}});
  CHECK(shortest_statement(all, all) == Statement{Form::sum, {Cube{}}});
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
  CHECK(shortest_statement(a, a) == Statement{Form::sum, {Cube{}}});
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
