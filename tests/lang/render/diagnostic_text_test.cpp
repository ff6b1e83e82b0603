#include "lang/render/diagnostic_text.hpp"

#include "tests/support/catch.hpp"

using namespace leat;
using namespace leat::render;

namespace {

source::Span span_of(source::SourceText const& text, std::string_view what) {
  auto const begin = text.text().find(what);
  REQUIRE(begin != std::string_view::npos);
  return {begin, begin + what.size()};
}

}  // namespace

TEST_CASE("a fault is told with its line, carets and what to do") {
  source::SourceText const text("yard.leat", "leat 1\n  lever divrt\n");
  diagnostics::Diagnostic const found{"unknown-name",
                                      "There is no signal 'divrt'",
                                      {span_of(text, "divrt"), "used here", {}},
                                      {},
                                      "Write 'divert'."};
  CHECK(diagnostic_text(found, text, {}) ==
        "error  unknown-name  There is no signal 'divrt'\n"
        "    yard.leat:2:9\n"
        "\n"
        "        2    lever divrt\n"
        "                   ^^^^^\n"
        "        used here\n"
        "\n"
        "    do          Write 'divert'.\n"
        "\n");
  CHECK(diagnostic_line(found, text) ==
        "yard.leat:2:9: error: unknown-name: There is no signal 'divrt'; used here\n");
}

TEST_CASE("carets stand under wide signs, accents and tabs") {
  source::SourceText const text("a", "\t\xe6\xb0\xb4 e\xcc\x81 here");
  CHECK(source_excerpt(text, span_of(text, "here"), 0, {}) ==
        "1          \xe6\xb0\xb4 e\xcc\x81 here\n"
        "                ^^^^\n");
  CHECK(source_excerpt(text, span_of(text, "\xe6\xb0\xb4"), 0, {}) ==
        "1          \xe6\xb0\xb4 e\xcc\x81 here\n"
        "           ^^\n");
}

TEST_CASE("an empty span at the end of a line has one caret") {
  source::SourceText const text("a", "open\n");
  CHECK(source_excerpt(text, {4, 4}, 0, {}) == "1  open\n       ^\n");
}

TEST_CASE("a span over several lines is shown on its first") {
  source::SourceText const text("a", "one\ntwo\n");
  CHECK(source_excerpt(text, {1, 6}, 0, {}) == "1  one\n    ^^\n");
}

TEST_CASE("a long row is cut around the span and keeps a ruler") {
  std::string row(1000, 'X');
  row[500] = '?';
  source::SourceText const text("a", row);
  auto const shown = source_excerpt(text, {500, 501}, 0, {}, 40);
  CHECK(shown ==
        "   column          490       500       510       520\n"
        "1  ...    XXXXXXXXXXXXXXXXXXXX?XXXXXXXXXXXXXXXXXXX ...\n"
        "                              ^\n");
}

TEST_CASE("a row of many megabytes is shown at once, and sound") {
  std::string row(std::size_t{32} << 20, '\x80');
  source::SourceText const text("a", std::move(row));
  auto const shown = source_excerpt(text, {16u << 20, (16u << 20) + 4}, 0, {}, 40);
  CHECK(shown.size() < 300);
  CHECK(shown.find("^^^^") != std::string::npos);
}
