#include "engine/logic/prime_cubes.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::logic;

namespace {

SmallRows small(RowSet const& rows) {
  SmallRows result;
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (rows.contains(row)) result.insert(row);
  }
  return result;
}

RowSet three_inputs(std::uint32_t bits) {
  RowSet rows(3);
  for (Row row = 0; row < 8; ++row) {
    if ((bits >> row & 1u) != 0) rows.insert(row);
  }
  return rows;
}

bool lies_within(Cube const& cube, RowSet const& rows) {
  return (rows_of(std::vector{cube}, rows.inputs()) & ~rows).is_empty();
}

// Oracle: each of the 27 cubes, and whether it may lose a literal.
std::vector<Cube> primes_one_by_one(RowSet const& allowed) {
  std::vector<Cube> primes;
  for (std::uint32_t care = 0; care < 8; ++care) {
    for (std::uint32_t value = 0; value < 8; ++value) {
      if ((value & ~care) != 0 || !lies_within({care, value}, allowed)) continue;
      bool is_prime = true;
      for (std::uint32_t bit : {1u, 2u, 4u})
        is_prime =
            is_prime && ((care & bit) == 0 || !lies_within({care & ~bit, value & ~bit}, allowed));
      if (is_prime) primes.push_back({care, value});
    }
  }
  return primes;
}

bool has(std::vector<Cube> const& cubes, Cube const& cube) {
  return std::find(cubes.begin(), cubes.end(), cube) != cubes.end();
}

}  // namespace

TEST_CASE("prime cubes of every function of 3 inputs, with their rows") {
  for (std::uint32_t bits = 0; bits < 256; ++bits) {
    auto const rows = three_inputs(bits);
    auto const expected = primes_one_by_one(rows);
    auto const primes = prime_cubes(small(rows), small(rows), 3);
    INFO("rows " << bits);
    REQUIRE(primes.size() == expected.size());
    for (auto const& prime : primes) {
      REQUIRE(has(expected, prime.cube));
      REQUIRE(prime.rows == small(rows_of(std::vector{prime.cube}, 3)));
    }
  }
}

TEST_CASE("a prime cube without a needed row is left out") {
  auto const a = RowSet::where_on(3, 0), b = RowSet::where_on(3, 1);
  auto const primes = prime_cubes(small(a & ~b), small(a | b), 3);
  REQUIRE(primes.size() == 1);
  CHECK(primes.front().cube == Cube{1, 1});
}

TEST_CASE("rows flipped at each place are those of the input negated") {
  for (int place = 0; place < SmallRows::most_inputs; ++place) {
    auto const on = SmallRows::where_on(place);
    CHECK(on == small(RowSet::where_on(8, 7 - place)));
    CHECK(on.flipped(place) == ~on);
    for (int other = 0; other < SmallRows::most_inputs; ++other) {
      if (other != place) CHECK(on.flipped(other) == on);
    }
  }
}

TEST_CASE("prime cubes of more inputs than fit are misuse") {
  CHECK_THROWS_AS(prime_cubes({}, {}, 9), leat::ContractBroken);
  CHECK_THROWS_AS(prime_cubes(SmallRows::where_on(0), {}, 3), leat::ContractBroken);
}
