#include "engine/logic/restriction.hpp"

#include <algorithm>
#include <random>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/diagram_of_rows.hpp"

using namespace leat;
using namespace leat::logic;
using drawn::diagram_of;
using drawn::random_rows;
using drawn::rows_of;
using Function = Diagram::Function;
using Levels = std::vector<Diagram::Level>;

namespace {

constexpr std::size_t plenty = 1 << 20;
constexpr int inputs = 6;

// Each row with one input set: by rows, without diagrams.
RowSet with_input(RowSet const& rows, unsigned input, bool is_on) {
  RowSet result(rows.inputs());
  auto const bit = Row{1} << (rows.inputs() - 1 - static_cast<int>(input));
  for (Row row = 0; row < rows.row_count(); ++row) {
    if (rows.contains(is_on ? row | bit : row & ~bit)) result.insert(row);
  }
  return result;
}

Levels inputs_that_matter(RowSet const& rows) {
  Levels levels;
  for (unsigned i = 0; i < inputs; ++i) {
    if (with_input(rows, i, true) != with_input(rows, i, false)) levels.push_back(i);
  }
  return levels;
}

Levels random_levels(std::mt19937& dice) {
  Levels levels;
  for (unsigned i = 0; i < inputs; ++i) {
    if (dice() % 2 == 0) levels.push_back(i);
  }
  return levels;
}

}  // namespace

// Oracle: the same on packed rows.
TEST_CASE("law: support, cofactor and exists say of a diagram what its rows say") {
  std::mt19937 dice(21);
  int narrow = 0;
  for (int trial = 0; trial < 200; ++trial) {
    auto rows = random_rows(inputs, dice, 2);
    for (auto level : random_levels(dice)) rows = with_input(rows, level, true);
    Diagram diagram(plenty);
    auto const f = diagram_of(diagram, rows);
    INFO("trial " << trial);
    CHECK(support(diagram, f) == inputs_that_matter(rows));
    CHECK(support(diagram, !f) == inputs_that_matter(rows));
    narrow += inputs_that_matter(rows).size() < inputs ? 1 : 0;
    auto const level = static_cast<unsigned>(dice() % inputs);
    for (bool is_on : {false, true})
      CHECK(rows_of(diagram, cofactor(diagram, f, level, is_on), inputs) ==
            with_input(rows, level, is_on));
    auto const levels = random_levels(dice);
    auto some = rows;
    for (auto out : levels) some = with_input(some, out, true) | with_input(some, out, false);
    CHECK(exists(diagram, f, levels) == diagram_of(diagram, some));
  }
  CHECK(narrow > 100);
}

TEST_CASE("law: a simplified function says the same where it matters, and is never larger") {
  std::mt19937 dice(22);
  int smaller = 0;
  for (int trial = 0; trial < 300; ++trial) {
    auto const rows = random_rows(inputs, dice, 2);
    auto care_rows = random_rows(inputs, dice, 1 + dice() % 4);
    care_rows.insert(static_cast<Row>(dice() % 64));
    Diagram diagram(plenty);
    auto const f = diagram_of(diagram, rows), care = diagram_of(diagram, care_rows);
    auto const g = simplified(diagram, f, care);
    INFO("trial " << trial);
    CHECK(diagram.both(diagram.differ(f, g), care) == Diagram::never);
    CHECK(diagram.size(g) <= diagram.size(f));
    smaller += diagram.size(g) < diagram.size(f) ? 1 : 0;
    auto const before = support(diagram, f), after = support(diagram, g);
    CHECK(std::includes(before.begin(), before.end(), after.begin(), after.end()));
  }
  CHECK(smaller > 100);
}

TEST_CASE("where one side does not matter its test goes") {
  Diagram diagram(plenty);
  auto const a = diagram.variable(3), b = diagram.variable(700);
  CHECK(simplified(diagram, diagram.both(a, b), a) == b);
  CHECK(simplified(diagram, diagram.both(a, b), diagram.both(a, b)) == Diagram::always);
  CHECK(simplified(diagram, diagram.differ(a, b), Diagram::always) == diagram.differ(a, b));
}

TEST_CASE("constants depend on nothing, and stay") {
  Diagram diagram(plenty);
  CHECK(support(diagram, Diagram::always).empty());
  CHECK(exists(diagram, Diagram::never, {0, 1}) == Diagram::never);
  CHECK(cofactor(diagram, Diagram::always, 5, true) == Diagram::always);
}

// Closed form: some setting of every second variable makes a parity true, whatever the others.
TEST_CASE("exists over hundreds of variables") {
  Diagram diagram(plenty);
  auto parity = Diagram::never;
  for (unsigned i = 0; i < 400; ++i) parity = diagram.differ(parity, diagram.variable(i));
  CHECK(support(diagram, parity).size() == 400);
  CHECK(exists(diagram, parity, {399}) == Diagram::always);
  CHECK(exists(diagram, parity, {}) == parity);
  auto const one = cofactor(diagram, parity, 0, true);
  CHECK(one == diagram.differ(parity, !diagram.variable(0)));
}

TEST_CASE("levels out of order, and a care set of nothing, are misuse") {
  Diagram diagram(plenty);
  CHECK_THROWS_AS(exists(diagram, diagram.variable(0), {1, 0}), leat::ContractBroken);
  CHECK_THROWS_AS(simplified(diagram, diagram.variable(0), Diagram::never), leat::ContractBroken);
}

TEST_CASE("the deepest functions are followed down, those that are too deep together are not") {
  Diagram diagram(std::size_t{1} << 20);
  auto const all_of = [&](Diagram::Level count, Diagram::Level first, Diagram::Level step) {
    auto all = Diagram::always;
    for (auto i = count; i-- > 0;) all = diagram.node(first + step * i, Diagram::never, all);
    return all;
  };
  auto const last = Diagram::most_depth - 1;
  auto const all = all_of(Diagram::most_depth, 0, 1);
  CHECK(cofactor(diagram, all, last, false) == Diagram::never);
  CHECK(diagram.depth(exists(diagram, all, {last})) == last);
  CHECK(simplified(diagram, all, all_of(last, 0, 1)) == diagram.variable(last));
  CHECK_FALSE(diagram.has_run_out());
  auto const half = Diagram::most_depth / 2 + 1;
  simplified(diagram, all_of(half, 0, 2), !all_of(half, 1, 2));
  CHECK(diagram.has_run_out());
}
