#include "engine/model/practice.hpp"

#include <set>

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using namespace leat::model;

TEST_CASE("every constant starts at its standard, within its bounds, under a name of its own") {
  Practice const practice;
  std::set<std::string_view> names;
  for (auto const& row : rule_table) {
    INFO(row.name);
    CHECK(practice[row.rule] == row.standard);
    CHECK(row.least <= row.standard);
    CHECK(row.standard <= row.most);
    CHECK(names.insert(row.name).second);
  }
}

TEST_CASE("a constant set changes alone") {
  Practice practice;
  practice.set(Rule::head_run, 5);
  CHECK(practice[Rule::head_run] == 5);
  practice.set(Rule::head_run, 2);
  CHECK(practice == Practice{});
}

TEST_CASE("a constant outside its bounds is misuse") {
  Practice practice;
  for (auto const& row : rule_table) {
    INFO(row.name);
    CHECK_THROWS_AS(practice.set(row.rule, row.least - 1), leat::ContractBroken);
    CHECK_THROWS_AS(practice.set(row.rule, row.most + 1), leat::ContractBroken);
    CHECK_NOTHROW(practice.set(row.rule, row.most));
  }
}
