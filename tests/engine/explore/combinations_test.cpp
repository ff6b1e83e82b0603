#include "engine/explore/combinations.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;

namespace {
explore::Combinations combine(model::Design const& design) {
  return explore::combine(design, logic::Truth(design.circuit, {0, 1}));
}
}  // namespace

TEST_CASE("every combination of the inputs is a row, gathered by what it makes of the cells") {
  auto const combinations = combine(drawn::draw({{"ac"}}));
  CHECK(combinations.inputs == std::vector<model::SignalId>{0, 1});
  CHECK(combinations.setting_of_row == std::vector<std::uint32_t>{0, 1, 2, 3});
  CHECK(combinations.settings.size() == 4);
}

TEST_CASE("rows that make the same of the cells share a setting") {
  CHECK(combine(drawn::draw({{"a."}})).setting_of_row == std::vector<std::uint32_t>{0, 0, 1, 1});
  CHECK(combine(drawn::draw({{"c."}})).setting_of_row == std::vector<std::uint32_t>{0, 1, 0, 1});
  CHECK(combine(drawn::draw({{".."}})).setting_of_row == std::vector<std::uint32_t>{0, 0, 0, 0});
  CHECK(combine(drawn::draw({{"ab"}})).settings.size() == 2);
}

TEST_CASE("rows of chosen settings") {
  auto const combinations = combine(drawn::draw({{"a."}}));
  auto const rows = combinations.rows_where([](auto setting) { return setting == 1; });
  CHECK(rows == logic::RowSet::where_on(2, 0));
  CHECK(combinations.rows_where([](auto) { return false; }).is_empty());
}
