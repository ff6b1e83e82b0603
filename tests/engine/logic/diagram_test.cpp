#include "engine/logic/diagram.hpp"

#include <cmath>
#include <random>

#include "engine/contract.hpp"
#include "engine/logic/row_set.hpp"
#include "engine/logic/truth.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::logic;
using model::Operator;
using Function = Diagram::Function;

namespace {

constexpr std::size_t plenty = 1 << 20;

bool is_true_in(Diagram const& diagram, Function f, Row row, int inputs) {
  std::vector<bool> is_on;
  for (int i = 0; i < inputs; ++i) is_on.push_back((row >> (inputs - 1 - i) & 1u) != 0);
  return diagram.is_true(f, is_on);
}

bool is_same(Diagram const& diagram, Function f, RowSet const& rows) {
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (is_true_in(diagram, f, row, rows.inputs()) != rows.contains(row)) return false;
  }
  return true;
}

// Majority: at least half of the inputs and one more.
Function at_least(Diagram& diagram, int wanted, int from, int inputs) {
  if (wanted <= 0) return Diagram::always;
  if (wanted > inputs - from) return Diagram::never;
  auto const without = at_least(diagram, wanted, from + 1, inputs);
  auto const with = at_least(diagram, wanted - 1, from + 1, inputs);
  return diagram.choice(diagram.variable(static_cast<Diagram::Level>(from)), with, without);
}

}  // namespace

// Oracle: truth tables as packed rows, made by other code (engine/logic/truth).
TEST_CASE("law: diagrams of random expressions hold the rows of their truth tables") {
  constexpr int inputs = 7;
  for (unsigned seed = 0; seed < 200; ++seed) {
    std::mt19937 dice(seed);
    model::Circuit circuit;
    std::vector<model::SignalId> signals;
    for (unsigned i = 0; i < inputs; ++i) {
      circuit.signals.push_back({});
      signals.push_back(i);
      circuit.add({Operator::signal, i, 0});
    }
    Diagram diagram(plenty);
    std::vector<Function> functions;
    for (unsigned i = 0; i < inputs; ++i) functions.push_back(diagram.variable(i));
    for (int i = 0; i < 30; ++i) {
      auto const count = static_cast<std::uint32_t>(functions.size());
      auto const left = dice() % count, right = dice() % count;
      constexpr Operator operators[] = {Operator::negation, Operator::conjunction,
                                        Operator::disjunction, Operator::parity};
      auto const op = operators[dice() % 4];
      circuit.add({op, static_cast<std::uint32_t>(left), static_cast<std::uint32_t>(right)});
      auto const f = functions[left], g = functions[right];
      functions.push_back(op == Operator::negation      ? !f
                          : op == Operator::conjunction ? diagram.both(f, g)
                          : op == Operator::disjunction ? diagram.either(f, g)
                                                        : diagram.differ(f, g));
    }
    Truth const truth(circuit, signals);
    bool is_all_same = true;
    for (std::size_t e = 0; e < functions.size(); ++e) {
      auto const rows = truth.of(static_cast<model::ExpressionId>(e));
      is_all_same = is_all_same && is_same(diagram, functions[e], rows);
      CHECK(std::ldexp(diagram.share(functions[e]), inputs) ==
            static_cast<long double>(rows.count()));
      for (std::size_t other = 0; other < e; ++other) {
        bool const is_equal = truth.of(static_cast<model::ExpressionId>(other)) == rows;
        is_all_same = is_all_same && (functions[other] == functions[e]) == is_equal;
      }
    }
    INFO("seed " << seed);
    CHECK(is_all_same);
  }
}

TEST_CASE("law: a choice is what its three functions say, row by row") {
  constexpr int inputs = 5;
  std::mt19937 dice(1);
  Diagram diagram(plenty);
  auto const random_function = [&] {
    auto f = Diagram::never;
    for (int cube = 0; cube < 4; ++cube) {
      auto product = Diagram::always;
      for (unsigned i = 0; i < inputs; ++i) {
        auto const literal = dice() % 3;
        auto const variable = diagram.variable(i);
        if (literal != 2) product = diagram.both(product, literal == 0 ? variable : !variable);
      }
      f = diagram.differ(f, product);
    }
    return f;
  };
  for (int i = 0; i < 300; ++i) {
    auto const f = random_function(), g = random_function(), h = random_function();
    auto const chosen = diagram.choice(f, g, h);
    bool is_right = true;
    for (Row row = 0; row < 1u << inputs; ++row) {
      auto const from = is_true_in(diagram, f, row, inputs) ? g : h;
      is_right = is_right &&
                 is_true_in(diagram, chosen, row, inputs) == is_true_in(diagram, from, row, inputs);
    }
    CHECK(is_right);
    CHECK(chosen == diagram.either(diagram.both(f, g), diagram.both(!f, h)));
  }
}

// Closed form: with complemented edges the parity of n variables takes one node each and the
// constant.
TEST_CASE("parity of n variables has n nodes and the constant") {
  Diagram diagram(plenty);
  auto parity = Diagram::never;
  for (unsigned i = 0; i < 100; ++i) parity = diagram.differ(parity, diagram.variable(i));
  CHECK(diagram.size(parity) == 101);
  CHECK(diagram.share(parity) == 0.5L);
}

// Closed form: "at least k of n" needs to know how many are on so far: k (n - k + 1) nodes and the
// constant; the rows are a sum of binomials, half of all for an odd majority.
TEST_CASE("majority of 2k-1 variables has k squared nodes and holds in half of the rows") {
  for (int k : {2, 5, 12}) {
    Diagram diagram(plenty);
    auto const majority = at_least(diagram, k, 0, 2 * k - 1);
    CHECK(diagram.size(majority) == static_cast<std::size_t>(k * k + 1));
    CHECK(diagram.share(majority) == 0.5L);
  }
}

// Closed form: a multiplexer whose k address bits come first tests them as a full tree, then one of
// 2^k data bits: 2^k - 1 + 2^k nodes and the constant.
TEST_CASE("a multiplexer of k address bits has 2^(k+1) - 1 nodes and the constant") {
  for (unsigned k : {1u, 3u, 6u}) {
    Diagram diagram(plenty);
    std::vector<Function> chosen;
    for (unsigned data = 0; data < 1u << k; ++data) chosen.push_back(diagram.variable(k + data));
    for (auto address = k; address-- > 0;) {
      std::vector<Function> half;
      for (std::size_t i = 0; i < chosen.size(); i += 2)
        half.push_back(diagram.choice(diagram.variable(address), chosen[i + 1], chosen[i]));
      chosen = half;
    }
    CHECK(diagram.size(chosen[0]) == (2u << k));
    CHECK(diagram.share(chosen[0]) == 0.5L);
  }
}

// Bryant 1986: pairs x1 y1 + x2 y2 + ... take one node a variable in this order, and exponentially
// many with all x before all y.
TEST_CASE("the order decides: pairs together are linear, pairs apart double with each pair") {
  constexpr unsigned pairs = 8;
  auto const size_of = [&](auto place_of_x, auto place_of_y) {
    Diagram diagram(plenty);
    auto sum = Diagram::never;
    for (unsigned i = 0; i < pairs; ++i) {
      auto const product =
          diagram.both(diagram.variable(place_of_x(i)), diagram.variable(place_of_y(i)));
      sum = diagram.either(sum, product);
    }
    return diagram.size(sum);
  };
  auto const together =
      size_of([](unsigned i) { return 2 * i; }, [](unsigned i) { return 2 * i + 1; });
  auto const apart = size_of([](unsigned i) { return i; }, [](unsigned i) { return pairs + i; });
  CHECK(together == 2 * pairs + 1);
  CHECK(apart == (2u << pairs) - 1);
}

TEST_CASE("a share as small as one row of 2000 variables is not lost, nor its complement's") {
  Diagram diagram(plenty);
  auto row = Diagram::always;
  for (unsigned i = 2000; i-- > 0;)
    row = diagram.both(i % 3 == 0 ? diagram.variable(i) : !diagram.variable(i), row);
  CHECK(diagram.share(row) == std::ldexp(1.0L, -2000));
  CHECK(diagram.share(!row) == 1.0L);
}

TEST_CASE("a diagram keeps its budget and says that it has run out") {
  Diagram diagram(50);
  auto sum = Diagram::never;
  for (unsigned i = 0; i < 30; ++i) {
    auto const product = diagram.both(diagram.variable(i), diagram.variable(30 + i));
    sum = diagram.either(sum, product);
  }
  CHECK(diagram.has_run_out());
  CHECK(diagram.node_count() <= 50);
}

namespace {

// All of the variables from one on, every second or each.
Function all_of(Diagram& diagram, Diagram::Level count, Diagram::Level first = 0,
                Diagram::Level step = 1) {
  auto all = Diagram::always;
  for (auto i = count; i-- > 0;) all = diagram.node(first + step * i, Diagram::never, all);
  return all;
}

}  // namespace

TEST_CASE("a path tests so many variables and no more") {
  Diagram diagram(plenty);
  auto const deepest = all_of(diagram, Diagram::most_depth - 1, 1);
  CHECK(diagram.depth(deepest) == Diagram::most_depth - 1);
  CHECK(diagram.both(deepest, diagram.variable(0)) == all_of(diagram, Diagram::most_depth));
  CHECK(diagram.depth(!diagram.differ(deepest, diagram.variable(0))) == Diagram::most_depth);
  CHECK(diagram.both(deepest, all_of(diagram, Diagram::most_depth)) ==
        all_of(diagram, Diagram::most_depth));
  CHECK_FALSE(diagram.has_run_out());
  diagram.both(all_of(diagram, Diagram::most_depth, 1), diagram.variable(0));
  CHECK(diagram.has_run_out());
}

TEST_CASE("what is deep together is not followed, by any operation") {
  for (int operation = 0; operation < 3; ++operation) {
    Diagram diagram(plenty);
    auto const count = Diagram::most_depth / 2 + 1;
    auto const even = all_of(diagram, count, 0, 2), odd = all_of(diagram, count, 1, 2);
    REQUIRE_FALSE(diagram.has_run_out());
    if (operation == 0) diagram.both(even, odd);
    if (operation == 1) diagram.differ(even, odd);
    if (operation == 2) diagram.choice(diagram.variable(0), even, odd);
    CHECK(diagram.has_run_out());
  }
}

TEST_CASE("a diagram is made shallower, not deeper") {
  Diagram diagram(plenty, 10);
  CHECK_FALSE((all_of(diagram, 10) == Diagram::never || diagram.has_run_out()));
  all_of(diagram, 11);
  CHECK(diagram.has_run_out());
  CHECK_THROWS_AS(Diagram(plenty, Diagram::most_depth + 1), ContractBroken);
}
