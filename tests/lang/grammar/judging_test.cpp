#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

TEST_CASE("a body and its properties") {
  CHECK(declaration_of(
            "body walker { footprint 1  height 2\n floats breath 300 ticks safe_fall 3 }") ==
        "body walker[footprint=1; height=2; floats=_; breath=300; safe_fall=3]");
}

TEST_CASE("settings of practice") {
  CHECK(declaration_of("practice { longest_drop 4  head_run 2 }") ==
        "practice[longest_drop=4; head_run=2]");
  CHECK(reports_of("leat 1\npractice {\n  longest_drop\n  head_run many\n}\n") ==
        "3:15 cut-short\n"
        "  The rule of practice is cut short: a number is missing\n"
        "  [] a number is expected here\n"
        "  > A rule of practice is written: longest_drop 3\n"
        "4:12 out-of-place\n"
        "  'many' stands where a number is expected in the rule of practice\n"
        "  [many] a number is expected here\n"
        "  > A rule of practice is written: longest_drop 3\n");
}

TEST_CASE("an acceptance with each of its parts") {
  CHECK(declaration_of(
            "accept diagonal-current at side_turn 4 4 0 when divert because \"one a minute\"") ==
        "accept diagonal-current place:(side_turn,4,4,0) when:divert because:\"one a minute\"");
  CHECK(declaration_of("accept dry-stand at 4 4 0\n  because \"x\"") ==
        "accept dry-stand place:(_,4,4,0) when:_ because:\"x\"");
  CHECK(declaration_of("accept pinned because \"a \\\"b\\\" \\\\ c\"") ==
        "accept pinned place:_ when:_ because:\"a \"b\" \\ c\"");
}

TEST_CASE("an acceptance without a reason, or with half a place") {
  std::string const remedy =
      "  > An acceptance is written: accept FINDING at JUNCTION 3 4 0 when EXPRESSION because "
      "\"reason\"\n";
  CHECK(reports_of("leat 1\naccept dry-stand at 1 2 3\nsignals { lever a }\n") ==
        "2:26 cut-short\n"
        "  The acceptance is cut short: 'because' is missing\n"
        "  [] 'because' is expected here\n" +
            remedy);
  CHECK(reports_of("leat 1\naccept dry-stand at 1 2 because \"x\"\n") ==
        "2:25 out-of-place\n"
        "  'because' stands where the place's third number (the level) is expected in the "
        "acceptance\n"
        "  [because] the place's third number (the level) is expected here\n" +
            remedy);
}

TEST_CASE("texts end on their line and know two escapes") {
  CHECK(reports_of("leat 1\naccept pinned because \"half\naccept pinned because \"a\\n\"\n"
                   "accept pinned because \"a\tb\"\n") ==
        "2:28 unclosed-text\n"
        "  A text does not end on its line\n"
        "  [] a closing '\"' is missing here\n"
        "  2:23 [\"] the text begins here\n"
        "  > Close it with '\"' on the same line.\n"
        "3:25 unknown-escape\n"
        "  A backslash in a text stands only before '\"' or another backslash\n"
        "  [\\] this backslash means nothing\n"
        "  > Write '\\\\' for a backslash.\n"
        "4:25 control-character\n"
        "  A text holds a tab\n"
        "  [\t] a tab stands here\n"
        "  > Write blanks instead.\n");
}
