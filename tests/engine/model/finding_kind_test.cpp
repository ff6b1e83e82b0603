#include "engine/model/finding_kind.hpp"

#include <set>

#include "tests/support/catch.hpp"

using namespace leat::model;

TEST_CASE("the table of findings is in the order of its kinds, and names are its own") {
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < finding_table.size(); ++i) {
    INFO(finding_table[i].name);
    CHECK(finding_table[i].kind == static_cast<FindingKind>(i));
    CHECK(&row_of(static_cast<FindingKind>(i)) == &finding_table[i]);
    CHECK(names.insert(finding_table[i].name).second);
    CHECK(finding_table[i].name.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") ==
          std::string_view::npos);
  }
}
