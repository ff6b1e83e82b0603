#include "engine/logic/least_choice.hpp"

#include <bit>
#include <random>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::logic;

namespace {

constexpr std::size_t plenty = 100'000'000;

SmallRows rows(std::initializer_list<Row> list) {
  SmallRows result;
  for (auto row : list) result.insert(row);
  return result;
}

struct Cost {
  int count = 1 << 30;
  std::uint32_t price = 0;
  auto operator<=>(Cost const&) const = default;
};

Cost cost_of(std::vector<Offer> const& offers, std::vector<std::uint32_t> const& taken) {
  Cost cost{static_cast<int>(taken.size()), 0};
  for (auto offer : taken) cost.price += offers[offer].price;
  return cost;
}

bool is_held(std::vector<Offer> const& offers, std::vector<std::uint32_t> const& taken,
             SmallRows const& needed) {
  SmallRows held;
  for (auto offer : taken) held |= offers[offer].rows;
  return needed.is_within(held);
}

// Oracle: every subset of the offers.
Cost least_of_all(std::vector<Offer> const& offers, SmallRows const& needed) {
  Cost best;
  for (std::uint32_t subset = 0; subset < 1u << offers.size(); ++subset) {
    std::vector<std::uint32_t> taken;
    for (std::uint32_t i = 0; i < offers.size(); ++i) {
      if ((subset >> i & 1u) != 0) taken.push_back(i);
    }
    if (is_held(offers, taken, needed)) best = std::min(best, cost_of(offers, taken));
  }
  return best;
}

// Triples of rows on a ring: a cyclic core of any size.
std::vector<Offer> ring(Row size) {
  std::vector<Offer> offers;
  for (Row row = 0; row < size; ++row)
    offers.push_back({rows({row, (row + 1) % size, (row + 2) % size}), 1});
  return offers;
}

SmallRows first_rows(Row count) {
  SmallRows result;
  for (Row row = 0; row < count; ++row) result.insert(row);
  return result;
}

}  // namespace

TEST_CASE("law: no subset of random offers is smaller or cheaper") {
  std::mt19937 dice(5);
  int with_choice = 0;
  for (int trial = 0; trial < 400; ++trial) {
    auto const needed = first_rows(static_cast<Row>(6 + dice() % 12));
    std::vector<Offer> offers{{needed, 100}};
    auto const count = 6 + dice() % 8;
    while (offers.size() < count) {
      Offer offer{{}, static_cast<std::uint32_t>(dice() % 5)};
      for (int i = 0; i < 5; ++i) offer.rows.insert(static_cast<Row>(dice() % 18));
      offers.push_back(offer);
    }
    // Half of the trials without the offer that holds all.
    if (trial % 2 == 0) offers.front().rows = rows({0, 1});
    SmallRows held;
    for (auto const& offer : offers) held |= offer.rows;
    auto const choice = least_choice(offers, needed & held, plenty);
    INFO("trial " << trial);
    REQUIRE(choice.is_least);
    REQUIRE(is_held(offers, choice.taken, needed & held));
    REQUIRE(cost_of(offers, choice.taken) == least_of_all(offers, needed & held));
    with_choice += choice.taken.size() > 2 ? 1 : 0;
  }
  CHECK(with_choice > 100);
}

// Closed form: triples on a ring of n rows need at least n / 3 of them, and so many do.
TEST_CASE("a ring of triples is held by a third of them, rounded up") {
  for (Row size : {7u, 12u, 20u, 31u}) {
    auto const choice = least_choice(ring(size), first_rows(size), plenty);
    CHECK(choice.is_least);
    CHECK(choice.taken.size() == (size + 2) / 3);
  }
}

TEST_CASE("without work to spend it still chooses, spares nothing and does not claim the least") {
  auto const offers = ring(31);
  auto const choice = least_choice(offers, first_rows(31), 1);
  CHECK_FALSE(choice.is_least);
  CHECK(is_held(offers, choice.taken, first_rows(31)));
  for (std::size_t i = 0; i < choice.taken.size(); ++i) {
    auto fewer = choice.taken;
    fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
    CHECK_FALSE(is_held(offers, fewer, first_rows(31)));
  }
}

TEST_CASE("fewest first, then cheapest") {
  std::vector<Offer> const offers{{rows({0, 1}), 9}, {rows({0}), 1}, {rows({1}), 1}};
  CHECK(least_choice(offers, rows({0, 1}), plenty).taken == std::vector<std::uint32_t>{0});
  std::vector<Offer> const equals{{rows({0, 1}), 9}, {rows({0, 1, 2}), 8}};
  CHECK(least_choice(equals, rows({0, 1}), plenty).taken == std::vector<std::uint32_t>{1});
}

TEST_CASE("nothing needed takes nothing; what nothing holds is misuse") {
  CHECK(least_choice({}, {}, plenty).taken.empty());
  CHECK(least_choice({}, {}, plenty).is_least);
  CHECK_THROWS_AS(least_choice({{rows({0}), 1}}, rows({0, 1}), plenty), leat::ContractBroken);
}
