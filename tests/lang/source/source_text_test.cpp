#include "lang/source/source_text.hpp"

#include "engine/contract.hpp"
#include "tests/support/catch.hpp"

using leat::source::Position;
using leat::source::SourceText;
using leat::source::Span;

TEST_CASE("a line is found without its line end") {
  SourceText const text("a.leat", "one\ntwo\r\n\nfour");
  CHECK(text.line_count() == 4);
  CHECK(text.line(1) == "one");
  CHECK(text.line(2) == "two");
  CHECK(text.line(3) == "");
  CHECK(text.line(4) == "four");
}

TEST_CASE("a text that ends in a line end has an empty last line") {
  SourceText const text("a.leat", "one\n");
  CHECK(text.line_count() == 2);
  CHECK(text.line(2) == "");
  CHECK(text.position(4) == Position{2, 1});
}

TEST_CASE("an empty text has one empty line") {
  SourceText const text("a.leat", "");
  CHECK(text.line_count() == 1);
  CHECK(text.line(1) == "");
  CHECK(text.position(0) == Position{1, 1});
}

TEST_CASE("columns count code points, a tab as one") {
  SourceText const text("a.leat", "a\tb\n\xc3\xa9\xe2\x86\x92\xf0\x9f\x9c\x84z\n");
  CHECK(text.position(2) == Position{1, 3});
  CHECK(text.position(4) == Position{2, 1});
  CHECK(text.position(6) == Position{2, 2});
  CHECK(text.position(9) == Position{2, 3});
  CHECK(text.position(13) == Position{2, 4});
}

TEST_CASE("the offset at the end has a position") {
  SourceText const text("a.leat", "one\ntwo");
  CHECK(text.position(7) == Position{2, 4});
  CHECK_THROWS_AS(text.position(8), leat::ContractBroken);
}

TEST_CASE("the line break belongs to the line it ends") {
  SourceText const text("a.leat", "ab\r\ncd");
  CHECK(text.position(2) == Position{1, 3});
  CHECK(text.position(3) == Position{1, 4});
  CHECK(text.position(4) == Position{2, 1});
}

TEST_CASE("a leading byte order mark is dropped, a later one is not") {
  SourceText const text("a.leat", "\xef\xbb\xbfone\n\xef\xbb\xbf");
  CHECK(text.line(1) == "one");
  CHECK(text.line(2) == "\xef\xbb\xbf");
  CHECK(text.position(0) == Position{1, 1});
}

TEST_CASE("a span is a piece of the text") {
  SourceText const text("a.leat", "one two");
  CHECK(text.text(Span{4, 7}) == "two");
  CHECK(text.text(Span{7, 7}) == "");
  CHECK_THROWS_AS(text.text(Span{4, 8}), leat::ContractBroken);
  CHECK_THROWS_AS(text.text(Span{5, 4}), leat::ContractBroken);
}

TEST_CASE("bytes that are no code point count one column each") {
  SourceText const text("a.leat", "\xff\x80z");
  CHECK(text.position(2) == Position{1, 3});
}

TEST_CASE("files lie one behind the other, and an offset tells the file") {
  SourceText text("yard.leat", "one\ntwo");
  CHECK(text.add("parts/fork.leat", "drei\n") == 1);
  CHECK(text.add("empty.leat", "") == 2);
  CHECK(text.add("last.leat", "x") == 3);
  CHECK(text.file_count() == 4);
  CHECK(text.begin_of(0) == 0);
  CHECK(text.begin_of(1) == 8);
  CHECK(text.begin_of(2) == 14);
  CHECK(text.begin_of(3) == 15);
  CHECK(text.name() == "yard.leat");
  CHECK(text.name(1) == "parts/fork.leat");
  CHECK(text.text() == "one\ntwo");
  CHECK(text.file_text(1) == "drei\n");
  CHECK(text.file_of(7) == 0);  // the end of a file is its own
  CHECK(text.file_of(8) == 1);
  CHECK(text.file_of(14) == 2);
  CHECK(text.position(7) == Position{2, 4, 0});
  CHECK(text.position(8) == Position{1, 1, 1});
  CHECK(text.position(13) == Position{2, 1, 1});
  CHECK(text.position(14) == Position{1, 1, 2});
  CHECK(text.position(16) == Position{1, 2, 3});
  CHECK_THROWS_AS(text.position(17), leat::ContractBroken);
  CHECK_THROWS_AS(text.name(4), leat::ContractBroken);
}

TEST_CASE("lines and spans are those of one file") {
  SourceText text("yard.leat", "one\ntwo");
  text.add("fork.leat", "drei\r\nvier");
  CHECK(text.line_count() == 2);
  CHECK(text.line_count(1) == 2);
  CHECK(text.line(1, 1) == "drei");
  CHECK(text.line(2) == "two");
  CHECK(text.text(Span{8, 12}) == "drei");
  CHECK(text.text(Span{7, 7}).empty());
  CHECK_THROWS_AS(text.text(Span{4, 9}), leat::ContractBroken);
}

TEST_CASE("each file's own byte order mark is dropped") {
  SourceText text("a.leat", "\xef\xbb\xbfone");
  text.add("b.leat", "\xef\xbb\xbftwo");
  CHECK(text.line(1, 1) == "two");
  CHECK(text.begin_of(1) == 4);
}

TEST_CASE("a view of a short text stays good when files are added, and so does a copy") {
  SourceText text("a.leat", "x");
  auto const view = text.text();
  for (int i = 0; i < 100; ++i) text.add("b.leat", "y");
  CHECK(view == "x");
  auto const copy = text;
  text.add("c.leat", "z");
  CHECK(copy.file_count() == 101);
  CHECK(copy.position(2).file == 1);
}
