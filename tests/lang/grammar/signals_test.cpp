#include "tests/lang/grammar/reading_of.hpp"
#include "tests/support/catch.hpp"

using namespace leat::tests;

namespace {

std::string signal(std::string const& line) {
  return declaration_of("signals {\n  " + line + "\n}\n");
}
std::string fault(std::string const& lines) {
  return reports_of("leat 1\nsignals {\n" + lines + "\n}\n");
}

}  // namespace

TEST_CASE("each kind of signal is read") {
  CHECK(signal("lever divert") == "signals[lever divert on:_ off:_ for:_ starts:_]");
  CHECK(signal("button flush for 20 ticks") ==
        "signals[button flush on:_ off:_ for:20ticks starts:_]");
  CHECK(signal("plate passed") == "signals[plate passed on:_ off:_ for:_ starts:_]");
  CHECK(signal("wire shut = a and not b") ==
        "signals[wire shut on:and(a,not(b)) off:_ for:_ starts:_]");
  CHECK(signal("wire late = shut after 4 s") == "signals[wire late on:shut off:_ for:4s starts:_]");
  CHECK(signal("latch parked on a or b off not a") ==
        "signals[latch parked on:or(a,b) off:not(a) for:_ starts:_]");
  CHECK(signal("toggle turn on passed") == "signals[toggle turn on:passed off:_ for:_ starts:_]");
  CHECK(signal("clock beat every 1 tick") == "signals[clock beat on:_ off:_ for:1tick starts:_]");
}

TEST_CASE("all but wires may say how they start") {
  CHECK(signal("lever a starts on") == "signals[lever a on:_ off:_ for:_ starts:on]");
  CHECK(signal("button a for 2 ticks starts off") ==
        "signals[button a on:_ off:_ for:2ticks starts:off]");
  CHECK(signal("latch a on b off c starts on") == "signals[latch a on:b off:c for:_ starts:on]");
  CHECK(signal("toggle a on b starts on") == "signals[toggle a on:b off:_ for:_ starts:on]");
  CHECK(fault("wire w = a starts on") ==
        "3:12 unknown-entry\n"
        "  'starts' does not begin a signal\n"
        "  [starts] 'lever', 'button', 'plate', 'wire', 'latch', 'toggle', 'clock', 'never', 'for' "
        "or '}' is expected here\n"
        "  > A wire is written: wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks\n");
}

TEST_CASE("on and off as constants inside a latch") {
  CHECK(signal("latch a on on off off") == "signals[latch a on:ON off:OFF for:_ starts:_]");
}

TEST_CASE("several signals on a line, none in an empty block") {
  CHECK(signal("lever a  lever b") ==
        "signals[lever a on:_ off:_ for:_ starts:_; lever b on:_ off:_ for:_ starts:_]");
  CHECK(signal("") == "signals[]");
}

TEST_CASE("a number too large is read as such") {
  CHECK(signal("button a for 99999999999999999999 ticks") ==
        "signals[button a on:_ off:_ for:1000000000!ticks starts:_]");
}

TEST_CASE("a piece missing at the end of a line") {
  CHECK(fault("  lever\n  lever b") ==
        "3:8 cut-short\n"
        "  The lever is cut short: a name is missing\n"
        "  [] a name is expected here\n"
        "  > A lever is written: lever NAME\n");
  CHECK(fault("  button flush for  # how long?") ==
        "3:19 cut-short\n"
        "  The button is cut short: a duration such as 20 ticks or 4 s is missing\n"
        "  [] a duration such as 20 ticks or 4 s is expected here\n"
        "  > A button is written: button NAME for 20 ticks\n");
  CHECK(fault("  wire w\n") ==
        "3:9 cut-short\n"
        "  The wire is cut short: '=' is missing\n"
        "  [] '=' is expected here\n"
        "  > A wire is written: wire NAME = EXPRESSION, or wire NAME = EXPRESSION after 4 ticks\n");
}

TEST_CASE("a piece in the wrong place") {
  CHECK(fault("  button flush 20 ticks") ==
        "3:16 out-of-place\n"
        "  '20' stands where 'for' is expected in the button\n"
        "  [20] 'for' is expected here\n"
        "  > A button is written: button NAME for 20 ticks\n");
  CHECK(fault("  clock c every 5 minutes") ==
        "3:19 out-of-place\n"
        "  'minutes' stands where 'ticks' or 's' is expected in the clock\n"
        "  [minutes] 'ticks' or 's' is expected here\n"
        "  > A clock is written: clock NAME every 40 ticks\n");
  CHECK(fault("  button b for 20ticks") ==
        "3:16 out-of-place\n"
        "  '20ticks' stands where a duration such as 20 ticks or 4 s is expected in the button\n"
        "  [20ticks] a duration such as 20 ticks or 4 s is expected here\n"
        "  > A button is written: button NAME for 20 ticks\n");
}

TEST_CASE("a misspelt word is named") {
  CHECK(fault("  levr divert") ==
        "3:3 unknown-entry\n"
        "  'levr' does not begin a signal\n"
        "  [levr] 'lever', 'button', 'plate', 'wire', 'latch', 'toggle', 'clock', 'never', 'for' "
        "or '}' is expected here\n"
        "  > Perhaps 'lever' is meant.\n");
  CHECK(fault("  latch l on a fof b") ==
        "3:16 out-of-place\n"
        "  'fof' stands where 'off' is expected in the latch\n"
        "  [fof] 'off' is expected here\n"
        "  > Perhaps 'off' is meant.\n");
}

TEST_CASE("what cannot be a name") {
  CHECK(fault("  lever level") ==
        "3:9 reserved-name\n"
        "  'level' cannot be a name\n"
        "  [level] this is a word of the language\n"
        "  > Choose another name; adding a letter or '_' is enough.\n");
  CHECK(fault("  lever 2nd") ==
        "3:9 malformed-name\n"
        "  '2nd' cannot be a name\n"
        "  [2nd] a name does not begin with a digit\n"
        "  > Begin the name with a letter or '_'.\n");
  CHECK(fault("  lever side-gate") ==
        "3:9 malformed-name\n"
        "  'side-gate' cannot be a name\n"
        "  [side-gate] a name has no hyphens\n"
        "  > Join its parts by '_'.\n");
}

TEST_CASE("each faulty line has its own report and the good ones stay silent") {
  CHECK(faults_of(
            "leat 1\nsignals {\n  lever\n  lever good\n  wire = x\n  lever fine\n  plate 7\n}\n") ==
        std::vector<std::string>{"3:8 cut-short", "5:8 out-of-place", "7:9 out-of-place"});
}
