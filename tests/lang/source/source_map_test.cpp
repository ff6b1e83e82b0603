#include "lang/source/source_map.hpp"

#include "tests/support/catch.hpp"

using leat::source::SourceMap;
using leat::source::Span;

TEST_CASE("a drawn cell has its glyph's span, any other cell the junction's") {
  SourceMap map;
  map.junction.span = {10, 20};
  map.rows[{2, 1}].glyph_begins = {100, 101, 104, 105};
  CHECK(map.span_of({0, 1, 2}) == Span{100, 101});
  CHECK(map.span_of({1, 1, 2}) == Span{101, 104});
  CHECK(map.span_of({2, 1, 2}) == Span{104, 105});
  CHECK(map.span_of({3, 1, 2}) == Span{10, 20});
  CHECK(map.span_of({-1, 1, 2}) == Span{10, 20});
  CHECK(map.span_of({0, 0, 2}) == Span{10, 20});
  CHECK(map.span_of({0, 1, 3}) == Span{10, 20});
}
