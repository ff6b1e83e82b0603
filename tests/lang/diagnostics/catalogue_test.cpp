#include "lang/diagnostics/catalogue.hpp"

#include <set>

#include "tests/support/catch.hpp"

using leat::diagnostics::catalogue;
using leat::diagnostics::Listed;

TEST_CASE("every row has its own short name and a sentence") {
  std::set<std::string_view> names;
  for (auto const& row : catalogue) {
    CAPTURE(row.name);
    CHECK(names.insert(row.name).second);
    CHECK(row.name.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789-") ==
          std::string_view::npos);
    CHECK(row.meaning.ends_with('.'));
  }
}

TEST_CASE("a row's name is given as text") { CHECK(std::string(Listed("open-row")) == "open-row"); }
