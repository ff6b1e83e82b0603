#include "lang/source/soundness.hpp"

#include <string>

#include "tests/support/catch.hpp"

using leat::source::find_unsoundness;
using leat::source::Unsoundness;

TEST_CASE("plain text with tabs, both line ends and letters of any script is sound") {
  CHECK(!find_unsoundness(""));
  CHECK(!find_unsoundness("a\tb\nc\r\n\xc3\xa9\xe2\x86\x92"));
}

TEST_CASE("the first unsound byte and the number of its like are told") {
  auto const found = find_unsoundness(std::string("ab\0c\0\xff", 6));
  REQUIRE(found);
  CHECK(found->kind == Unsoundness::nul_byte);
  CHECK(found->offset == 2);
  CHECK(found->count == 2);
}

TEST_CASE("bytes that are no UTF-8 are found") {
  auto const found = find_unsoundness("ab\xed\xa0\x80");
  REQUIRE(found);
  CHECK(found->kind == Unsoundness::not_utf8);
  CHECK(found->offset == 2);
  CHECK(found->length == 1);
  CHECK(found->count == 3);
}

TEST_CASE(
    "control characters are found, a lone carriage return and the second control set included") {
  for (std::string const bytes : {"\x01", "\x1b", "\x7f", "\r", "a\rb", "\xc2\x85"}) {
    CAPTURE(bytes);
    auto const found = find_unsoundness(bytes);
    REQUIRE(found);
    CHECK(found->kind == Unsoundness::control_character);
  }
}

TEST_CASE("a text is too large from one byte past the bound") {
  std::string text(leat::source::largest_text, 'a');
  CHECK(!find_unsoundness(text));
  text += 'a';
  REQUIRE(find_unsoundness(text));
  CHECK(find_unsoundness(text)->kind == Unsoundness::too_large);
}
