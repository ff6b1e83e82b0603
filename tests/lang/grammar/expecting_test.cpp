#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

std::string clause(std::string const& line) {
  auto const whole = declaration_of("expect {\n  " + line + "\n}\n");
  std::string const before = "expect title:_ of:_[";
  REQUIRE(whole.starts_with(before));
  return whole.substr(before.size(), whole.size() - before.size() - 1);
}
std::string fault(std::string const& lines) {
  return reports_of("leat 1\nexpect {\n" + lines + "\n}\n");
}
std::string table_fault(std::string const& lines) {
  return reports_of("leat 1\nexpect table millhouse {\n" + lines + "\n}\n");
}

}  // namespace

TEST_CASE("clauses of routes") {
  CHECK(clause("millhouse reaches press when divert") ==
        "reaches body:_ subject:millhouse object:press place:_ when:divert");
  CHECK(clause("walker from millhouse reaches kiln otherwise") ==
        "reaches body:walker subject:millhouse object:kiln place:_ when:_ otherwise");
  CHECK(clause("millhouse reaches nothing when shut or\n  divert") ==
        "reaches body:_ subject:millhouse object:nothing place:_ when:or(shut,divert)");
  CHECK(clause("millhouse may reach kiln") ==
        "may_reach body:_ subject:millhouse object:kiln place:_ when:_");
  CHECK(clause("millhouse never reaches kiln when flush") ==
        "never_reaches body:_ subject:millhouse object:kiln place:_ when:flush");
}

TEST_CASE("clauses of what never happens") {
  CHECK(clause("walker never trapped") ==
        "never_state body:_ subject:walker object:trapped place:_ when:_");
  CHECK(clause("walker from millhouse never split") ==
        "never_state body:walker subject:millhouse object:split place:_ when:_");
  CHECK(clause("never spilled when x") ==
        "never_state body:_ subject:_ object:spilled place:_ when:x");
}

TEST_CASE("clauses of findings") {
  CHECK(clause("findings none") == "findings_none body:_ subject:_ object: place:_ when:_");
  CHECK(clause("findings none above note") ==
        "findings_none body:_ subject:_ object:note place:_ when:_");
  CHECK(clause("finds dry-stand") == "finds body:_ subject:_ object:dry-stand place:_ when:_");
  CHECK(clause("finds dry-stand at 3 4 0") ==
        "finds body:_ subject:_ object:dry-stand place:(_,3,4,0) when:_");
  CHECK(clause("finds pinned at side_turn 3 4 0") ==
        "finds body:_ subject:_ object:pinned place:(side_turn,3,4,0) when:_");
}

TEST_CASE("clauses after events") {
  CHECK(clause("after passed, divert,\n  passed:\n    millhouse reaches kiln") ==
        "after:[passed; divert; passed] reaches body:_ subject:millhouse object:kiln place:_ "
        "when:_");
  CHECK(clause("after passed: never trapped when divert") ==
        "after:[passed] never_state body:_ subject:_ object:trapped place:_ when:divert");
  CHECK(clause("after passed: findings none") ==
        "after:[passed] findings_none body:_ subject:_ object: place:_ when:_");
}

TEST_CASE("clauses of clearing") {
  CHECK(clause("clear within 12 s") == "clears body:_ subject:_ object: place:_ when:_ time:12s");
  CHECK(clause("walker clear within 240 ticks when divert") ==
        "clears body:_ subject:walker object: place:_ when:divert time:240ticks");
  CHECK(clause("after a: walker from millhouse clear\n  within 1 tick") ==
        "after:[a] clears body:walker subject:millhouse object: place:_ when:_ time:1tick");
}

TEST_CASE("clauses of trains") {
  CHECK(clause("millhouse deals kiln every 2 s") ==
        "deals body:_ subject:millhouse object: place:_ when:_ dealt:[kiln] time:2s");
  CHECK(clause("after a: walker from millhouse deals kiln, nothing,\n  press every 40 ticks for 4 "
               "rounds") ==
        "after:[a] deals body:walker subject:millhouse object: place:_ when:_ "
        "dealt:[kiln; nothing; press] time:40ticks rounds:4");
  CHECK(clause("deals deals rounds, deals every 2 s") ==
        "deals body:_ subject:deals object: place:_ when:_ dealt:[rounds; deals] time:2s");
  CHECK(clause("millhouse deals nothing every 2 s for 1 round") ==
        "deals body:_ subject:millhouse object: place:_ when:_ dealt:[nothing] time:2s rounds:1");
}

TEST_CASE("an expectation's title and junction") {
  CHECK(declaration_of("expect \"routes\" of side_turn { }") ==
        "expect title:\"routes\" of:side_turn[]");
  CHECK(declaration_of("expect of side_turn { }") == "expect title:_ of:side_turn[]");
}

TEST_CASE("a table") {
  CHECK(declaration_of("expect table walker from millhouse of side_turn {\n  divert flush | route\n"
                       "  1 0 | press\n  1 1 | kiln, press\n  0 - | nothing\n}\n") ==
        "table body:walker inlet:millhouse of:side_turn[divert; flush]"
        "[[1; 0]->[press]; [1; 1]->[kiln; press]; [0; -]->[nothing]]");
  CHECK(declaration_of("expect table millhouse {\n  | route\n  | kiln\n}") ==
        "table body:_ inlet:millhouse of:_[][[]->[kiln]]");
}

TEST_CASE("misspelt words in clauses") {
  CHECK(fault("  millhouse reches press") ==
        "3:13 out-of-place\n"
        "  'reches' stands where 'reaches', 'may reach', 'never', 'clear' or 'deals' is expected "
        "in the clause\n"
        "  [reches] 'reaches', 'may reach', 'never', 'clear' or 'deals' is expected here\n"
        "  > Perhaps 'reaches' is meant.\n");
  CHECK(fault("  findngs none") ==
        "3:3 misspelt-word\n"
        "  'findngs' is not understood here\n"
        "  [findngs] this may be a misspelt word\n"
        "  > Perhaps 'findings' is meant.\n");
  CHECK(fault("  walker never traped") ==
        "3:16 out-of-place\n"
        "  'traped' stands where 'reaches' or a state such as 'trapped' is expected in the clause\n"
        "  [traped] 'reaches' or a state such as 'trapped' is expected here\n"
        "  > Perhaps 'trapped' is meant.\n");
  CHECK(fault("  millhouse reaches press wen divert") ==
        "3:27 crowded-line\n"
        "  'wen' follows a clause that is already complete\n"
        "  [wen] the line's end is expected here\n"
        "  > Perhaps 'when' is meant.\n");
}

TEST_CASE("a clause without its outlet does not swallow the next line") {
  CHECK(fault("  millhouse reaches\n  millhouse reaches kiln") ==
        "3:20 cut-short\n"
        "  The clause is cut short: an outlet's name or 'nothing' is missing\n"
        "  [] an outlet's name or 'nothing' is expected here\n"
        "  > A clause is written: INLET reaches OUTLET, or BODY from INLET reaches OUTLET\n");
}

TEST_CASE("clauses cut short after their events, and events that are none") {
  std::string const remedy =
      "  > A clause is written: after divert, passed: INLET reaches OUTLET\n";
  CHECK(fault("  after divert, passed:\n") ==
        "3:24 cut-short\n"
        "  The clause is cut short: a clause such as 'INLET reaches OUTLET' is missing\n"
        "  [] a clause such as 'INLET reaches OUTLET' is expected here\n" +
            remedy);
  CHECK(fault("  after divert passed: millhouse reaches kiln") ==
        "3:16 out-of-place\n"
        "  'passed' stands where ',' or ':' is expected in the clause\n"
        "  [passed] ',' or ':' is expected here\n" +
            remedy);
  CHECK(fault("  after not divert: millhouse reaches kiln") ==
        "3:9 reserved-name\n"
        "  'not' cannot be a name\n"
        "  [not] this is a word of the language\n"
        "  > Choose another name; adding a letter or '_' is enough.\n");
  CHECK(fault("  after divert: after passed: millhouse reaches kiln") ==
        "3:17 out-of-place\n"
        "  'after' stands where a clause such as 'INLET reaches OUTLET' is expected in the clause\n"
        "  [after] a clause such as 'INLET reaches OUTLET' is expected here\n" +
            remedy);
  CHECK(fault("  aftr divert: millhouse reaches kiln") ==
        "3:3 misspelt-word\n"
        "  'aftr' is not understood here\n"
        "  [aftr] this may be a misspelt word\n"
        "  > Perhaps 'after' is meant.\n");
}

TEST_CASE("faulty clauses of time do not swallow the next line") {
  CHECK(fault("  walker clear within\n  clear 12 s\n  millhouse deals kiln,\n    press\n"
              "  millhouse deals\n  millhouse deals kiln every 2 s for 3\n  findings none") ==
        "3:22 cut-short\n"
        "  The clause is cut short: a duration such as 240 ticks or 12 s is missing\n"
        "  [] a duration such as 240 ticks or 12 s is expected here\n"
        "  > A clause is written: clear within 12 s, or INLET clear within 240 ticks\n"
        "4:9 out-of-place\n"
        "  '12' stands where 'within' is expected in the clause\n"
        "  [12] 'within' is expected here\n"
        "  > A clause is written: clear within 12 s, or INLET clear within 240 ticks\n"
        "6:10 cut-short\n"
        "  The clause is cut short: ',' or 'every' is missing\n"
        "  [] ',' or 'every' is expected here\n"
        "  > A clause is written: INLET deals OUTLET, nothing, OUTLET every 40 ticks, or ... every "
        "40 ticks for 4 rounds\n"
        "7:18 cut-short\n"
        "  The clause is cut short: an outlet's name or 'nothing' is missing\n"
        "  [] an outlet's name or 'nothing' is expected here\n"
        "  > A clause is written: INLET deals OUTLET, nothing, OUTLET every 40 ticks, or ... every "
        "40 ticks for 4 rounds\n"
        "8:39 cut-short\n"
        "  The clause is cut short: 'rounds' is missing\n"
        "  [] 'rounds' is expected here\n"
        "  > A clause is written: INLET deals OUTLET, nothing, OUTLET every 40 ticks, or ... every "
        "40 ticks for 4 rounds\n");
}

TEST_CASE("a faulty clause is left out with the lines it goes on in, and no further") {
  CHECK(faults_of(
            "leat 1\nexpect {\n  after 5, divert: # first\n    millhouse reches press\n"
            "  millhouse deals 5,\n    kiln, # x\n\n    press every 2 s\n  findngs none\n}\n") ==
        std::vector<std::string>{"3:9 out-of-place", "5:19 out-of-place", "9:3 misspelt-word"});
  CHECK(faults_of("leat 1\nexpect {\n  millhouse deals 5,\n}\nmarks {\n  a\n}\n") ==
        std::vector<std::string>{"3:19 out-of-place", "6:4 cut-short"});
  CHECK(faults_of("leat 1\nexpect {\n  millhouse deals 5,\nmarks {\n  a\n}\n") ==
        std::vector<std::string>{"3:19 out-of-place", "3:21 unclosed-block", "5:4 cut-short"});
}

TEST_CASE("faulty rows of a table") {
  std::string const remedy =
      "  > A row of the table is written: 1 0 - | OUTLET, one setting for each signal\n";
  CHECK(table_fault("  a b | route\n  1 2 | press\n  1 0\n  1 0 | press,\n  x 1 | press") ==
        "4:5 out-of-place\n"
        "  '2' stands where '0', '1', '-' or '|' is expected in the row of the table\n"
        "  [2] '0', '1', '-' or '|' is expected here\n" +
            remedy +
            "5:6 cut-short\n"
            "  The row of the table is cut short: '0', '1', '-' or '|' is missing\n"
            "  [] '0', '1', '-' or '|' is expected here\n" +
            remedy +
            "6:15 cut-short\n"
            "  The row of the table is cut short: an outlet's name or 'nothing' is missing\n"
            "  [] an outlet's name or 'nothing' is expected here\n" +
            remedy +
            "7:3 unknown-entry\n"
            "  'x' does not begin a row of the table\n"
            "  [x] '0', '1', '-' or '}' is expected here\n");
}

TEST_CASE("a table without its heading") {
  CHECK(table_fault("  1 0 | press") ==
        "2:25 cut-short\n"
        "  The table is cut short: a signal's name or '|' is missing\n"
        "  [] a signal's name or '|' is expected here\n"
        "  > A table is written: expect table INLET { divert | route ... }, one row a line\n");
  CHECK(faults_of("leat 1\nexpect tabel millhouse {\n  a | route\n}\n") ==
        std::vector<std::string>{"2:8 out-of-place"});
}
