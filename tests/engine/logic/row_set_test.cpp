#include "engine/logic/row_set.hpp"

#include <random>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::logic;

namespace {

RowSet random_rows(int inputs, std::mt19937& dice) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (dice() % 2 == 0) rows.insert(row);
  }
  return rows;
}

// One word and several, and the sizes at which the words change.
constexpr int sizes[] = {0, 1, 3, 5, 6, 7, 9};

}  // namespace

TEST_CASE("row sets combine row by row") {
  std::mt19937 dice(1);
  for (int inputs : sizes) {
    auto const a = random_rows(inputs, dice), b = random_rows(inputs, dice);
    std::size_t count = 0;
    for (Row row = 0; row < a.row_count(); ++row) {
      REQUIRE((a & b).contains(row) == (a.contains(row) && b.contains(row)));
      REQUIRE((a | b).contains(row) == (a.contains(row) || b.contains(row)));
      REQUIRE((a ^ b).contains(row) == (a.contains(row) != b.contains(row)));
      REQUIRE((~a).contains(row) == !a.contains(row));
      count += a.contains(row) ? 1u : 0u;
    }
    CHECK(a.count() == count);
  }
}

TEST_CASE("the laws of sets: complement, absorption, De Morgan") {
  std::mt19937 dice(2);
  for (int inputs : sizes) {
    auto const a = random_rows(inputs, dice), b = random_rows(inputs, dice);
    CHECK(~~a == a);
    CHECK((a & (a | b)) == a);
    CHECK(~(a & b) == (~a | ~b));
    CHECK((a ^ a).is_empty());
    CHECK((a | ~a).is_full());
    CHECK((a | ~a) == RowSet(inputs, true));
    CHECK((a & ~a) == RowSet(inputs));
  }
}

TEST_CASE("empty and full, counted") {
  for (int inputs : sizes) {
    CHECK(RowSet(inputs).is_empty());
    CHECK_FALSE(RowSet(inputs).is_full());
    CHECK(RowSet(inputs, true).is_full());
    CHECK(RowSet(inputs, true).count() == (std::size_t{1} << inputs));
  }
}

TEST_CASE("input i is bit k-1-i of a row: the last input changes fastest") {
  for (int inputs : sizes) {
    for (int i = 0; i < inputs; ++i) {
      auto const on = RowSet::where_on(inputs, i);
      for (Row row = 0; row < on.row_count(); ++row) {
        REQUIRE(on.contains(row) == ((row >> (inputs - 1 - i) & 1u) != 0));
      }
    }
  }
}

TEST_CASE("halves: the first input off and on, over the other inputs") {
  std::mt19937 dice(3);
  for (int inputs : sizes) {
    if (inputs == 0) continue;
    auto const rows = random_rows(inputs, dice);
    auto const off = rows.half(false), on = rows.half(true);
    REQUIRE(off.inputs() == inputs - 1);
    for (Row row = 0; row < off.row_count(); ++row) {
      REQUIRE(off.contains(row) == rows.contains(row));
      REQUIRE(on.contains(row) == rows.contains(row + off.row_count()));
    }
    CHECK(off.count() + on.count() == rows.count());
  }
}

TEST_CASE("the first row is the smallest") {
  RowSet rows(8);
  for (Row row : {200u, 64u, 65u}) {
    rows.insert(row);
    CHECK(rows.first() <= row);
  }
  CHECK(rows.first() == 64);
}

TEST_CASE("rows depend on an input if some pair of rows that differ there alone is parted") {
  for (int inputs : {1, 3, 6, 7, 9}) {
    for (int one = 0; one < inputs; ++one) {
      auto const alone = RowSet::where_on(inputs, one);
      RowSet parity(inputs), single(inputs);
      for (int i = 0; i < inputs; ++i) parity ^= RowSet::where_on(inputs, i);
      single.insert(single.row_count() - 1);
      for (int i = 0; i < inputs; ++i) {
        INFO(inputs << " inputs, " << i << " of " << one);
        CHECK(alone.depends_on(i) == (i == one));
        CHECK((parity ^ alone).depends_on(i) == (i != one));
        CHECK(single.depends_on(i));
        CHECK_FALSE(RowSet(inputs, true).depends_on(i));
      }
    }
  }
}

TEST_CASE("misuse of row sets is told") {
  CHECK_THROWS_AS(RowSet(25), leat::ContractBroken);
  CHECK_THROWS_AS(RowSet(-1), leat::ContractBroken);
  CHECK_THROWS_AS(RowSet(3).first(), leat::ContractBroken);
  CHECK_THROWS_AS(RowSet(0).half(true), leat::ContractBroken);
  CHECK_THROWS_AS(RowSet(3) & RowSet(4), leat::ContractBroken);
  CHECK_THROWS_AS(RowSet::where_on(3, 3), leat::ContractBroken);
  CHECK_THROWS_AS(RowSet(3).depends_on(3), leat::ContractBroken);
}
