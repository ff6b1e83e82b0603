#include "lang/source/code_point.hpp"

#include <string>

#include "tests/support/catch.hpp"

using leat::source::code_point_at;
using leat::source::code_point_count;

TEST_CASE("each length of code point is read") {
  CHECK(code_point_at("A", 0).value == U'A');
  CHECK(code_point_at("\xc2\xa0", 0).value == 0xa0);
  CHECK(code_point_at("\xe2\x86\x92", 0).value == 0x2192);
  CHECK(code_point_at("\xf0\x9f\x9c\x84", 0).value == 0x1f704);
  CHECK(code_point_at("\xf0\x9f\x9c\x84", 0).length == 4);
  CHECK(code_point_at("\xf4\x8f\xbf\xbf", 0).value == 0x10ffff);
}

TEST_CASE("bytes that are no UTF-8 are no code point") {
  for (std::string const bytes :
       {"\x80", "\xc0\x80", "\xc1\xbf", "\xc2", "\xc2z", "\xe0\x80\x80", "\xe0\x9f\xbf",
        "\xed\xa0\x80", "\xed\xbf\xbf", "\xe2\x86", "\xf0\x80\x80\x80", "\xf4\x90\x80\x80",
        "\xf5\x80\x80\x80", "\xff"}) {
    CAPTURE(bytes);
    CHECK(code_point_at(bytes, 0).length == 0);
  }
}

TEST_CASE("every code point but the surrogates is read back from its bytes") {
  for (char32_t value = 0; value <= 0x10ffff; ++value) {
    std::string bytes;
    auto const put = [&](unsigned lead, int shift) {
      bytes += static_cast<char>(lead | (value >> shift));
      for (shift -= 6; shift >= 0; shift -= 6)
        bytes += static_cast<char>(0x80 | ((value >> shift) & 0x3f));
    };
    value < 0x80      ? put(0, 0)
    : value < 0x800   ? put(0xc0, 6)
    : value < 0x10000 ? put(0xe0, 12)
                      : put(0xf0, 18);
    bool const is_surrogate = value >= 0xd800 && value < 0xe000;
    auto const read = code_point_at(bytes, 0);
    if (is_surrogate ? read.length != 0 : read.value != value || read.length != bytes.size())
      FAIL("code point " << static_cast<unsigned long>(value));
  }
}

TEST_CASE("code points are counted") {
  CHECK(code_point_count("") == 0);
  CHECK(code_point_count("a\xc3\xa9\xe2\x86\x92") == 3);
  CHECK(code_point_count("\xff\xffz") == 3);
}
