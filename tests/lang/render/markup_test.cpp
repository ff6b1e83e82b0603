#include "lang/render/markup.hpp"

#include "tests/support/catch.hpp"

namespace leat::render {

TEST_CASE("nothing of a text is markup once it is escaped") {
  CHECK(escaped("a<b>&\"") == "a&lt;b&gt;&amp;&quot;");
  CHECK(escaped("bell\x07, turn\xe2\x80\xae, odd\xff") == "bell?, turn?, odd?");
  CHECK(escaped("\xef\xbf\xbf") == "?");  // U+FFFF, which no XML document may hold
  CHECK(escaped("größer") == "größer");
}

TEST_CASE("line ends of a text are told as it is asked for") {
  CHECK(escaped("two\nlines") == "two?lines");
  CHECK(escaped("two\nlines", "&#10;") == "two&#10;lines");
}

TEST_CASE("a text is cut to columns, an ellipsis being the last") {
  CHECK(shortened("millhouse", 5) == "mill…");
  CHECK(shortened("mill", 5) == "mill");
}

}  // namespace leat::render
