#include "lang/render/columns.hpp"

#include "tests/support/catch.hpp"

using namespace leat::render;

TEST_CASE("columns are counted as a terminal sets them") {
  CHECK(columns_of("kiln") == 4);
  CHECK(columns_of("m\xc3\xbchle") == 5);
  CHECK(columns_of("\xe6\xb0\xb4") == 2);  // a wide sign
  CHECK(columns_of("e\xcc\x81") == 1);     // a combining accent
  CHECK(columns_of("\xff\xfe") == 2);      // no UTF-8: a sign a byte
}

TEST_CASE("what cannot be shown is shown as a question mark") {
  CHECK(showable("a\x1b[31mb\xff") == "a?[31mb?");
  CHECK(showable("\xc2\x9b") == "?");
  CHECK(showable("\xe6\xb0\xb4") == "\xe6\xb0\xb4");
}

TEST_CASE("marks of direction and line separators do nothing, letters written to the left stay") {
  CHECK(showable("a\xe2\x80\xae"
                 "b\xe2\x81\xa6"
                 "c\xd8\x9c"
                 "d\xe2\x80\xa8") == "a?b?c?d?");
  CHECK(showable("\xd7\x9e\xd7\x99\xd7\x9d") == "\xd7\x9e\xd7\x99\xd7\x9d");
}

TEST_CASE("words are set into lines under an indent") {
  CHECK(wrapped("one two three", 7, 2) == "one two\n  three");
  CHECK(wrapped("incomprehensible is long", 5, 0) == "incomprehensible\nis\nlong");
  CHECK(wrapped("", 5, 0).empty());
}

TEST_CASE("cells are set in columns without blanks at the end") {
  CHECK(aligned({{"a", "bb"}, {"ccc", ""}, {"\xe6\xb0\xb4", "d"}}, 1) ==
        " a    bb\n ccc\n \xe6\xb0\xb4   d\n");
}
