#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

std::string number(std::string const& text) {
  auto const shown = declaration_of("number n = " + text + "\n");
  return shown.substr(std::string("number n=").size());
}
std::string name(std::string const& text) { return expression_of(text); }
std::string repeated(std::string const& piece, std::size_t times) {
  std::string text;
  for (std::size_t i = 0; i < times; ++i) text += piece;
  return text;
}

}  // namespace

TEST_CASE("numbers: the strength of operations") {
  CHECK(number("3") == "3");
  CHECK(number("1 + 2 * 3") == "+(1,*(2,3))");
  CHECK(number("(1 + 2) * 3") == "*(+(1,2),3)");
  CHECK(number("a - b - c") == "-(-(a,b),c)");
  CHECK(number("a / b * c mod d") == "mod(*(/(a,b),c),d)");
  CHECK(number("2 ^ 3 ^ 2") == "^(2,^(3,2))");
  CHECK(number("-2 ^ 2") == "neg(^(2,2))");
  CHECK(number("-a * b") == "*(neg(a),b)");
  CHECK(number("2 ^ -a") == "^(2,neg(a))");
  CHECK(number("- -1") == "neg(neg(1))");
  CHECK(number("a-b") == "-(a,b)");
  CHECK(number("a-1") == "-(a,1)");
}

TEST_CASE("numbers: operations may go on in the next line, and words of works can be their names") {
  CHECK(number("1\n  + 2 *\n  3") == "+(1,*(2,3))");
  CHECK(number("mod mod turned") == "mod(mod,turned)");
  CHECK(number("(join)") == "join");
  CHECK(number("99999999999") == "1000000000!");
}

TEST_CASE("names hold numbers in brackets and parts joined by dots") {
  CHECK(name("turn[2 * lane + 1]") == "turn@4[+(*(2,lane),1)]");
  CHECK(name("first.kiln") == "first.kiln");
  CHECK(name("fork[2][lane].mill") == "fork[2].mill@7[lane]");
  CHECK(name("north.fork[ 0 ].gate[1]") == "north.fork[0].gate[1]");
  CHECK(name("not a[0] and b.c") == "and(not(a[0]),b.c)");
}

TEST_CASE("what is declared has brackets but no dots") {
  CHECK(declaration_of("signals { lever turn[lane] }") ==
        "signals[lever turn@4[lane] on:_ off:_ for:_ starts:_]");
  CHECK(faults_of("leat 1\nsignals { lever first.turn }\n") ==
        std::vector<std::string>{"2:22 unknown-entry"});
}

TEST_CASE("a bracket touches its name and is closed") {
  CHECK(reports_of("leat 1\nsignals { wire w = turn [3] }\n") ==
        "2:25 malformed-name\n"
        "  A number in brackets does not touch its name\n"
        "  [[] this bracket belongs to the name before it\n"
        "  > Write name and bracket without a blank, as in 'turn[3]'.\n");
  CHECK(reports_of("leat 1\nsignals {\n  wire w = turn[3\n}\n") ==
        "3:18 cut-short\n"
        "  The wire is cut short: ']' is missing\n"
        "  [] ']' is expected here\n"
        "  > A wire is written: wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks\n");
  CHECK(reports_of("leat 1\nsignals { wire w = turn[] }\n") ==
        "2:25 out-of-place\n"
        "  ']' stands where a number such as 3 or lane + 1 is expected in the wire\n"
        "  []] a number such as 3 or lane + 1 is expected here\n"
        "  > A wire is written: wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks\n");
  CHECK(faults_of("leat 1\njunction j[1] { }\n") == std::vector<std::string>{"2:11 out-of-place"});
}

TEST_CASE("a number that is not written as one") {
  CHECK(reports_of("leat 1\nnumber lanes 8\n") ==
        "2:14 out-of-place\n"
        "  '8' stands where '=' is expected in the number\n"
        "  [8] '=' is expected here\n"
        "  > A number is written: number NAME = 3, or number NAME = 2 * OTHER + 1\n");
  CHECK(reports_of("leat 1\nnumber lanes = \nnumber wide = 2 *\n\nnumber odd = 3 + on\n") ==
        "2:15 cut-short\n"
        "  The number is cut short: a number such as 3 or 2 * lanes is missing\n"
        "  [] a number such as 3 or 2 * lanes is expected here\n"
        "  > A number is written: number NAME = 3, or number NAME = 2 * OTHER + 1\n"
        "3:18 cut-short\n"
        "  The number is cut short: a number, the name of one, '-' or '(' is missing\n"
        "  [] a number, the name of one, '-' or '(' is expected here\n"
        "  > A number is written: number NAME = 3, or number NAME = 2 * OTHER + 1\n"
        "5:18 reserved-name\n"
        "  'on' cannot be a name\n"
        "  [on] this is a word of the language\n"
        "  > Choose another name; adding a letter or '_' is enough.\n");
  CHECK(faults_of("leat 1\nnumber n = 2 + (3\nmarks { }\n") ==
        std::vector<std::string>{"2:18 cut-short"});
}

TEST_CASE("the steps of a number are bounded, however they are written") {
  auto const is_sound = [](std::string const& text) {
    return faults_of("leat 1\nnumber n = " + text + "\n").empty();
  };
  auto const is_bounded = [](std::string const& text) {
    auto const faults = faults_of("leat 1\nnumber n = " + text + "\n");
    return faults.size() == 1 && faults.front().ends_with(" nested-too-deep");
  };
  CHECK(is_sound("1" + repeated(" + 1", 200)));
  CHECK(is_bounded("1" + repeated(" + 1", 201)));
  CHECK(is_sound(repeated("2 ^ ", 200) + "1"));
  CHECK(is_bounded(repeated("2 ^ ", 201) + "1"));
  CHECK(is_sound(repeated("-", 200) + "1"));
  CHECK(is_bounded(repeated("-", 201) + "1"));
  CHECK(is_sound(repeated("(", 200) + "1" + repeated(")", 200)));
  CHECK(is_bounded(repeated("(", 201) + "1" + repeated(")", 201)));
  CHECK(is_bounded(repeated("(1 + ", 101) + "1" + repeated(")", 101)));
}

// ---- repetitions ----

TEST_CASE("loops are laid flat with their ranges") {
  CHECK(declaration_of("signals {\n"
                       "  lever a\n"
                       "  for i in 0..lanes - 1 {\n"
                       "    lever b[i]\n"
                       "    for j in 1..2 { plate c[i][j]  plate d }\n"
                       "    for k in 3..3 { }\n"
                       "  }\n"
                       "  for l in (2)..-1 { lever e }\n"
                       "}\n") ==
        "signals[lever a on:_ off:_ for:_ starts:_; "
        "lever b@1[i] on:_ off:_ for:_ starts:_; "
        "plate c@1[i]@1[j] on:_ off:_ for:_ starts:_; "
        "plate d on:_ off:_ for:_ starts:_; "
        "lever e on:_ off:_ for:_ starts:_]"
        " loops[i:0..-(lanes,1) 1-4; j:1..2 2-4; k:3..3 4-4; l:2..neg(1) 4-5]");
}

TEST_CASE("promises stand beside the signals, in the same loops") {
  CHECK(declaration_of(
            "signals { never a and b\n for i in 0..1 { for j in 2..3 { never c[i] } } }") ==
        "signals[] loops[i:0..1 0-0 never 1-2; j:2..3 0-0 never 1-2] never[and(a,b); c@1[i]]");
}

TEST_CASE("clauses are repeated") {
  CHECK(declaration_of(
            "expect {\n  for i in 0..3 {\n    a[i] reaches b.c[i] when d[i]\n"
            "    after e[i], f: g deals h[i], nothing every 2 s\n  }\n  clear within 2 s\n}") ==
        "expect title:_ of:_[reaches body:_ subject:a@1[i] object:b.c@3[i] place:_ when:d@1[i]; "
        "after:[e@1[i]; f] deals body:_ subject:g object: place:_ when:_ dealt:[h@1[i]; nothing] "
        "time:2s; "
        "clears body:_ subject:_ object: place:_ when:_ time:2s] loops[i:0..3 0-2]");
}

TEST_CASE("a repetition that is not written as one") {
  CHECK(reports_of(
            "leat 1\nsignals {\n  for lane of 0..3 { lever a }\n  for lane in 0-3 { lever b }\n"
            "  for 3 in 0..1 { lever c }\n  lever\n  for lane in 0..1\n}\n") ==
        "3:12 out-of-place\n"
        "  'of' stands where 'in' is expected in the repetition\n"
        "  [of] 'in' is expected here\n"
        "  > A repetition is written: for NAME in 0..7 { ... }\n"
        "4:19 out-of-place\n"
        "  '{' stands where '..' is expected in the repetition\n"
        "  [{] '..' is expected here\n"
        "  > A repetition is written: for NAME in 0..7 { ... }\n"
        "5:7 out-of-place\n"
        "  '3' stands where a name is expected in the repetition\n"
        "  [3] a name is expected here\n"
        "  > A repetition is written: for NAME in 0..7 { ... }\n"
        "6:8 cut-short\n"
        "  The lever is cut short: a name is missing\n"
        "  [] a name is expected here\n"
        "  > A lever is written: lever NAME\n"
        "7:19 cut-short\n"
        "  The repetition is cut short: '{' is missing\n"
        "  [] '{' is expected here\n"
        "  > A repetition is written: for NAME in 0..7 { ... }\n");
}

TEST_CASE("a misspelt word that begins a repetition is named") {
  CHECK(reports_of("leat 1\nsignals {\n  fro lane in 0..3 { lever a[lane] }\n}\n") ==
        "3:3 unknown-entry\n"
        "  'fro' does not begin a signal\n"
        "  [fro] 'lever', 'button', 'plate', 'wire', 'latch', 'toggle', 'clock', 'never', 'for' or "
        "'}' is expected here\n"
        "  > Perhaps 'for' is meant.\n");
  CHECK(reports_of("leat 1\nexpect {\n  fro lane in 0..3 { a reaches b }\n}\n") ==
        "3:3 misspelt-word\n"
        "  'fro' is not understood here\n"
        "  [fro] this may be a misspelt word\n"
        "  > Perhaps 'for' is meant.\n");
}

TEST_CASE("repetitions are nested two hundred levels deep at most") {
  auto const nested = [](std::size_t depth) {
    return faults_of("leat 1\nsignals {\n" + repeated("for a in 0..1 {\n", depth) + "lever b\n" +
                     repeated("}\n", depth) + "}\n");
  };
  CHECK(nested(200).empty());
  CHECK(nested(201) == std::vector<std::string>{"203:15 nested-too-deep"});
  CHECK(nested(5000).size() == 1);
}

TEST_CASE("a repetition that is not closed is shown where it was opened") {
  CHECK(reports_of("leat 1\nsignals {\n  for i in 0..1 {\n    lever a\n\nmarks { }\n") ==
        "4:12 unclosed-block\n"
        "  A block is not closed before 'marks'\n"
        "  [] a '}' is missing here\n"
        "  3:17 [{] the block is opened here\n"
        "  > Add the '}' after the last line that belongs to the block.\n");
}
