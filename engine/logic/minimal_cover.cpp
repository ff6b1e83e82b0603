#include "engine/logic/minimal_cover.hpp"

#include <algorithm>
#include <bit>
#include <utility>

#include "engine/contract.hpp"
#include "engine/logic/least_choice.hpp"
#include "engine/logic/prime_cubes.hpp"

namespace leat::logic {

namespace {

// Looks at columns: some ten milliseconds.
constexpr std::size_t most_work = 1'000'000;

constexpr std::size_t most_inputs = SmallRows::most_inputs;

// Counted no further than past the limit.
std::vector<int> inputs_that_matter(RowSet const& needed, RowSet const& allowed) {
  std::vector<int> inputs;
  for (int i = 0; i < needed.inputs() && inputs.size() <= most_inputs; ++i) {
    if (needed.depends_on(i) || allowed.depends_on(i)) inputs.push_back(i);
  }
  return inputs;
}

// The rows over some of the inputs alone; the others do not matter, and are taken as off.
SmallRows narrowed(RowSet const& rows, std::vector<int> const& inputs) {
  SmallRows result;
  auto const count = inputs.size();
  for (Row row = 0; row < Row{1} << count; ++row) {
    Row wide = 0;
    for (std::size_t i = 0; i < count; ++i) {
      if ((row >> (count - 1 - i) & 1u) != 0) wide |= Row{1} << (rows.inputs() - 1 - inputs[i]);
    }
    if (rows.contains(wide)) result.insert(row);
  }
  return result;
}

std::uint32_t widened(std::uint32_t bits, std::vector<int> const& inputs) {
  std::uint32_t result = 0;
  for (std::size_t i = 0; i < inputs.size(); ++i)
    result |= (bits >> i & 1u) << static_cast<unsigned>(inputs[i]);
  return result;
}

std::uint32_t literals(Cube const& cube) {
  return static_cast<std::uint32_t>(std::popcount(cube.care));
}

// Literals first, then negations: no sum of 256 cubes has as many negations as one literal weighs.
std::uint32_t price(Cube const& cube) {
  constexpr std::uint32_t weight_of_literal = 1u << 12;
  return literals(cube) * weight_of_literal +
         static_cast<std::uint32_t>(std::popcount(cube.care & ~cube.value));
}

std::pair<std::size_t, std::uint64_t> cost(std::vector<Cube> const& cubes) {
  std::uint64_t sum = 0;
  for (auto const& cube : cubes) sum += price(cube);
  return {cubes.size(), sum};
}

// Widest first; among equals by the first input at which they differ: off, on, not named.
bool comes_before(Cube const& a, Cube const& b) {
  if (literals(a) != literals(b)) return literals(a) < literals(b);
  auto const differing = (a.care ^ b.care) | (a.value ^ b.value);
  if (differing == 0) return false;
  auto const bit = differing & (~differing + 1);
  auto const rank = [&](Cube const& cube) {
    if ((cube.care & bit) == 0) return 2;
    return (cube.value & bit) != 0 ? 1 : 0;
  };
  return rank(a) < rank(b);
}

MinimalSum chosen_primes(SmallRows const& needed, SmallRows const& allowed,
                         std::vector<int> const& inputs) {
  auto primes = prime_cubes(needed, allowed, static_cast<int>(inputs.size()));
  std::sort(primes.begin(), primes.end(),
            [](PrimeCube const& a, PrimeCube const& b) { return comes_before(a.cube, b.cube); });
  std::vector<Offer> offers;
  offers.reserve(primes.size());
  for (auto const& prime : primes) offers.push_back({prime.rows, price(prime.cube)});
  auto const choice = least_choice(offers, needed, most_work);
  MinimalSum sum{{}, choice.is_least};
  for (auto taken : choice.taken) {
    auto const& cube = primes[taken].cube;
    sum.cubes.push_back({widened(cube.care, inputs), widened(cube.value, inputs)});
  }
  return sum;
}

bool is_constant(std::vector<Cube> const& cubes) {
  return cubes.empty() || cubes.front().care == 0;
}

}  // namespace

MinimalSum minimal_cover(RowSet const& needed, RowSet const& allowed) {
  require((needed & ~allowed).is_empty(), "minimal_cover: needed rows must be allowed");
  auto const inputs = inputs_that_matter(needed, allowed);
  MinimalSum sum;
  if (inputs.size() <= most_inputs) {
    sum = chosen_primes(narrowed(needed, inputs), narrowed(allowed, inputs), inputs);
    if (sum.is_minimal) return sum;
  }
  auto plain = irredundant_cover(needed, allowed);
  bool const is_better = inputs.size() > most_inputs || cost(plain) < cost(sum.cubes);
  if (is_better) sum = {std::move(plain), false};
  if (is_constant(sum.cubes)) sum.is_minimal = true;
  return sum;
}

MinimalProduct minimal_clauses(RowSet const& needed, RowSet const& allowed) {
  auto const sum = minimal_cover(~allowed, ~needed);
  MinimalProduct product{{}, sum.is_minimal};
  for (auto const& cube : sum.cubes)
    product.clauses.push_back({cube.care, cube.care & ~cube.value});
  return product;
}

RowSet rows_of(std::vector<Clause> const& clauses, int inputs) {
  std::vector<Cube> missed;
  for (auto const& clause : clauses) missed.push_back({clause.care, clause.care & ~clause.value});
  return ~rows_of(missed, inputs);
}

}  // namespace leat::logic
