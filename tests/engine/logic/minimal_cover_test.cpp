#include "engine/logic/minimal_cover.hpp"

#include <algorithm>
#include <bit>
#include <limits>
#include <random>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::logic;

namespace {

struct Size {
  int cubes = 0, literals = 0;
  auto operator<=>(Size const&) const = default;
};

template <class Term>
Size size_of(std::vector<Term> const& terms) {
  Size size{static_cast<int>(terms.size()), 0};
  for (auto const& term : terms) size.literals += std::popcount(term.care);
  return size;
}

RowSet rows_from_bits(int inputs, std::uint32_t bits) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if ((bits >> row & 1u) != 0) rows.insert(row);
  }
  return rows;
}

std::uint32_t bits_of(RowSet const& rows) {
  std::uint32_t bits = 0;
  for (Row row = 0; row < rows.row_count(); ++row) bits |= (rows.contains(row) ? 1u : 0u) << row;
  return bits;
}

RowSet random_rows(int inputs, std::mt19937& dice, unsigned long of_a_hundred) {
  RowSet rows(inputs);
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (dice() % 100 < of_a_hundred) rows.insert(row);
  }
  return rows;
}

bool lies_between(RowSet const& rows, RowSet const& needed, RowSet const& allowed) {
  return (needed & ~rows).is_empty() && (rows & ~allowed).is_empty();
}

struct CubeOfBits {
  std::uint32_t rows = 0;
  int literals = 0;
};

// Every cube of up to 5 inputs, counted in base three, its rows by testing each.
std::vector<CubeOfBits> all_cubes(int inputs) {
  std::vector<CubeOfBits> cubes;
  int count = 1;
  for (int i = 0; i < inputs; ++i) count *= 3;
  for (int code = 0; code < count; ++code) {
    CubeOfBits cube;
    for (Row row = 0; row < Row{1} << inputs; ++row) {
      bool is_inside = true;
      for (int i = 0, rest = code; i < inputs; ++i, rest /= 3)
        is_inside = is_inside && (rest % 3 == 2 || rest % 3 == static_cast<int>(row >> i & 1u));
      cube.rows |= (is_inside ? 1u : 0u) << row;
    }
    for (int i = 0, rest = code; i < inputs; ++i, rest /= 3) cube.literals += rest % 3 != 2 ? 1 : 0;
    cubes.push_back(cube);
  }
  return cubes;
}

constexpr Size unknown{std::numeric_limits<int>::max(), 0};

// Oracle: for every function the least size of a set of cubes, prime or not, that is exactly it:
// all sets of one cube, all of two, and so on, as long as something new comes up.
std::vector<Size> least_sizes(int inputs) {
  auto const cubes = all_cubes(inputs);
  std::vector<Size> least(std::size_t{1} << (1u << inputs), unknown);
  least[0] = {0, 0};
  std::vector<std::uint32_t> latest{0};
  for (int count = 1; !latest.empty(); ++count) {
    std::vector<std::uint32_t> next;
    for (auto rows : latest) {
      for (auto const& cube : cubes) {
        auto& known = least[rows | cube.rows];
        Size const size{count, least[rows].literals + cube.literals};
        if (size >= known) continue;
        if (known.cubes != count) next.push_back(rows | cube.rows);
        known = size;
      }
    }
    latest = std::move(next);
  }
  return least;
}

// The least over all functions between: every subset of what is free.
Size least_between(std::vector<Size> const& least, std::uint32_t needed, std::uint32_t allowed) {
  auto const free = allowed & ~needed;
  auto best = unknown;
  for (auto part = free;; part = (part - 1) & free) {
    best = std::min(best, least[needed | part]);
    if (part == 0) return best;
  }
}

// Oracle for more inputs: deepening over the number of cubes; the first row still missing must lie
// in some widest cube around it.
struct Deepening {
  std::uint32_t needed;
  std::vector<CubeOfBits> widest;
  int best_literals = std::numeric_limits<int>::max();

  Deepening(int inputs, std::uint32_t needed_rows, std::uint32_t allowed) : needed(needed_rows) {
    std::vector<CubeOfBits> inside;
    for (auto const& cube : all_cubes(inputs)) {
      if ((cube.rows & ~allowed) == 0) inside.push_back(cube);
    }
    for (auto const& cube : inside) {
      bool const is_widest = std::none_of(inside.begin(), inside.end(), [&](auto const& other) {
        return other.rows != cube.rows && (cube.rows & ~other.rows) == 0;
      });
      if (is_widest) widest.push_back(cube);
    }
  }

  void cover(std::uint32_t held, int cubes_left, int literals) {
    auto const missing = needed & ~held;
    if (missing == 0) {
      best_literals = std::min(best_literals, literals);
    } else if (cubes_left > 0) {
      auto const row = missing & (~missing + 1);
      for (auto const& cube : widest) {
        if ((cube.rows & row) != 0)
          cover(held | cube.rows, cubes_left - 1, literals + cube.literals);
      }
    }
  }

  Size least() {
    for (int count = 0;; ++count) {
      cover(0, count, 0);
      if (best_literals != std::numeric_limits<int>::max()) return {count, best_literals};
    }
  }
};

Size checked_size(RowSet const& needed, RowSet const& allowed) {
  auto const sum = minimal_cover(needed, allowed);
  REQUIRE(sum.is_minimal);
  REQUIRE(lies_between(rows_of(sum.cubes, needed.inputs()), needed, allowed));
  return size_of(sum.cubes);
}

Size checked_product_size(RowSet const& needed, RowSet const& allowed) {
  auto const product = minimal_clauses(needed, allowed);
  REQUIRE(product.is_minimal);
  REQUIRE(lies_between(rows_of(product.clauses, needed.inputs()), needed, allowed));
  return size_of(product.clauses);
}

RowSet minterms(int inputs, std::vector<Row> const& rows) {
  RowSet result(inputs);
  for (auto row : rows) result.insert(row);
  return result;
}

}  // namespace

TEST_CASE("law: minimal for every function of 3 inputs with every set of free rows") {
  auto const least = least_sizes(3);
  for (std::uint32_t allowed = 0; allowed < 256; ++allowed) {
    for (std::uint32_t needed = 0; needed < 256; ++needed) {
      if ((needed & ~allowed) != 0) continue;
      INFO("needed " << needed << ", allowed " << allowed);
      REQUIRE(checked_size(rows_from_bits(3, needed), rows_from_bits(3, allowed)) ==
              least_between(least, needed, allowed));
      // A product of clauses is as large as the sum of what it leaves out.
      REQUIRE(checked_product_size(rows_from_bits(3, needed), rows_from_bits(3, allowed)) ==
              least_between(least, 255 & ~allowed, 255 & ~needed));
    }
  }
}

TEST_CASE("law: minimal for functions of 4 inputs, and for random ones with free rows") {
  auto const least = least_sizes(4);
  for (std::uint32_t rows = 0; rows < 0x10000; rows += 3) {
    INFO("rows " << rows);
    REQUIRE(checked_size(rows_from_bits(4, rows), rows_from_bits(4, rows)) == least[rows]);
  }
  std::mt19937 dice(41);
  for (int trial = 0; trial < 1500; ++trial) {
    auto const needed = random_rows(4, dice, 10 + dice() % 70);
    auto const allowed = needed | random_rows(4, dice, dice() % 60);
    INFO("trial " << trial);
    REQUIRE(checked_size(needed, allowed) ==
            least_between(least, bits_of(needed), bits_of(allowed)));
  }
}

TEST_CASE("law: minimal for random functions of 5 inputs") {
  std::mt19937 dice(51);
  for (int trial = 0; trial < 150; ++trial) {
    auto const needed = random_rows(5, dice, 10 + dice() % 80);
    auto const allowed = needed | random_rows(5, dice, dice() % 60);
    INFO("trial " << trial);
    REQUIRE(checked_size(needed, allowed) ==
            Deepening(5, bits_of(needed), bits_of(allowed)).least());
  }
}

TEST_CASE("law: never larger than the irredundant cover, often smaller, whatever the inputs") {
  std::mt19937 dice(61);
  int smaller = 0;
  for (int trial = 0; trial < 200; ++trial) {
    auto const inputs = static_cast<int>(dice() % 11);
    auto const needed = random_rows(inputs, dice, 20 + dice() % 60);
    auto const allowed = needed | random_rows(inputs, dice, 30);
    auto const sum = minimal_cover(needed, allowed);
    auto const plain = irredundant_cover(needed, allowed);
    REQUIRE(lies_between(rows_of(sum.cubes, inputs), needed, allowed));
    REQUIRE(size_of(sum.cubes) <= size_of(plain));
    smaller += size_of(sum.cubes) < size_of(plain) ? 1 : 0;
    CHECK(minimal_cover(needed, allowed) == sum);
  }
  CHECK(smaller > 50);
}

TEST_CASE("past eight inputs that matter the irredundant cover answers, and says so") {
  std::mt19937 dice(71);
  auto const rows = random_rows(9, dice, 50);
  CHECK(minimal_cover(rows, rows) == MinimalSum{irredundant_cover(rows, rows), false});
  CHECK(minimal_cover(RowSet(9), rows) == MinimalSum{{}, true});
  CHECK(minimal_cover(rows, RowSet(9, true)) == MinimalSum{{Cube{}}, true});
}

TEST_CASE("inputs on which nothing depends do not count") {
  // The cyclic condition below, over the inputs 2, 5 and 19 of 20.
  auto const a = RowSet::where_on(20, 2), b = RowSet::where_on(20, 5), c = RowSet::where_on(20, 19);
  auto const rows = (a ^ b) | (b ^ c);
  auto const sum = minimal_cover(rows, rows);
  CHECK(sum.is_minimal);
  CHECK(size_of(sum.cubes) == Size{3, 6});
  CHECK(rows_of(sum.cubes, 20) == rows);
}

TEST_CASE("past its bound of work it answers all the same, and says so") {
  std::mt19937 dice(81);
  int undecided = 0;
  for (int trial = 0; trial < 10; ++trial) {
    auto const rows = random_rows(8, dice, 75);
    auto const sum = minimal_cover(rows, rows);
    CHECK(rows_of(sum.cubes, 8) == rows);
    undecided += sum.is_minimal ? 0 : 1;
  }
  CHECK(undecided > 0);
}

TEST_CASE("nothing is no cube, everything one cube without literals, also without inputs") {
  for (int inputs : {0, 1, 4, 8}) {
    RowSet const none(inputs), all(inputs, true);
    CHECK(minimal_cover(none, none) == MinimalSum{{}, true});
    CHECK(minimal_cover(none, all) == MinimalSum{{}, true});
    CHECK(minimal_cover(all, all) == MinimalSum{{Cube{}}, true});
    CHECK(minimal_clauses(none, none) == MinimalProduct{{Clause{}}, true});
    CHECK(minimal_clauses(all, all) == MinimalProduct{{}, true});
  }
}

TEST_CASE("a clause names an input plainly or negated") {
  auto const a = RowSet::where_on(2, 0), b = RowSet::where_on(2, 1);
  CHECK(minimal_clauses(a | ~b, a | ~b) == MinimalProduct{{Clause{3, 1}}, true});
  CHECK(rows_of(std::vector{Clause{3, 1}}, 2) == (a | ~b));
}

TEST_CASE("widest cubes first, then those that name the earlier inputs off, on, not") {
  auto const a = RowSet::where_on(3, 0), b = RowSet::where_on(3, 1), c = RowSet::where_on(3, 2);
  auto const rows = (a & b) | (~a & ~b) | c;
  CHECK(minimal_cover(rows, rows).cubes == std::vector{Cube{4, 4}, Cube{3, 0}, Cube{3, 3}});
}

TEST_CASE("among equals the one with the fewest negations") {
  // b alone and not a alone both hold the row in which only b is on.
  auto const a = RowSet::where_on(2, 0), b = RowSet::where_on(2, 1);
  CHECK(minimal_cover(~a & b, ~a | b).cubes == std::vector{Cube{2, 2}});
  CHECK(minimal_cover(a & ~b, a | ~b).cubes == std::vector{Cube{1, 1}});
}

TEST_CASE("rows that are needed but not allowed are misuse") {
  CHECK_THROWS_AS(minimal_cover(RowSet(2, true), RowSet(2)), leat::ContractBroken);
  CHECK_THROWS_AS(minimal_clauses(RowSet(2, true), RowSet(2)), leat::ContractBroken);
}

// From memory: the usual example of the method, four inputs, rows 9 and 14 free.
TEST_CASE("the textbook example 4 8 10 11 12 15 takes three cubes and seven literals") {
  auto const needed = minterms(4, {4, 8, 10, 11, 12, 15});
  CHECK(checked_size(needed, needed | minterms(4, {9, 14})) == Size{3, 7});
}

// From memory: the smallest cyclic core; taking cubes as they come can end with four.
TEST_CASE("the cyclic condition of three inputs takes three cubes of two literals") {
  auto const rows = minterms(3, {1, 2, 3, 4, 5, 6});
  CHECK(checked_size(rows, rows) == Size{3, 6});
}

// From memory: the segments of a figure as printed in textbooks, 6 and 9 with a tail, rows 10 to 15
// free. Inputs are the digit's bits, highest first.
TEST_CASE("the seven segments of a decimal digit have their published sizes") {
  struct Segment {
    char name;
    std::vector<Row> digits;
    Size size;
  };
  std::vector<Segment> const segments{
      {'a', {0, 2, 3, 5, 6, 7, 8, 9}, {4, 6}},     // A + C + BD + B'D'
      {'b', {0, 1, 2, 3, 4, 7, 8, 9}, {3, 5}},     // B' + CD + C'D'
      {'c', {0, 1, 3, 4, 5, 6, 7, 8, 9}, {3, 3}},  // B + C' + D
      {'d', {0, 2, 3, 5, 6, 8, 9}, {5, 10}},       // A + B'C + B'D' + CD' + BC'D
      {'e', {0, 2, 6, 8}, {2, 4}},                 // B'D' + CD'
      {'f', {0, 4, 5, 6, 8, 9}, {4, 7}},           // A + BC' + BD' + C'D'
      {'g', {2, 3, 4, 5, 6, 8, 9}, {4, 7}},        // A + BC' + B'C + CD'
  };
  auto const free = minterms(4, {10, 11, 12, 13, 14, 15});
  for (auto const& segment : segments) {
    INFO("segment " << segment.name);
    auto const needed = minterms(4, segment.digits);
    CHECK(checked_size(needed, needed | free) == segment.size);
  }
}

// Closed form: no two rows of a parity are neighbours, so each is a cube of its own.
TEST_CASE("a parity of n inputs takes half of all rows as cubes") {
  for (int inputs : {2, 5, 8}) {
    RowSet parity(inputs);
    for (int i = 0; i < inputs; ++i) parity ^= RowSet::where_on(inputs, i);
    auto const half = 1 << (inputs - 1);
    CHECK(checked_size(parity, parity) == Size{half, half * inputs});
  }
}
