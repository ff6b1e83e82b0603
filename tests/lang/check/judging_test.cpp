#include "tests/lang/check/faults.hpp"
#include "tests/support/catch.hpp"

using namespace leat::check;

namespace {

Faults with(std::string const& more) { return names_of_faults(Sample{.more = more}.text()); }

Faults expecting(std::string const& clauses) { return with("expect \"it\" {\n" + clauses + "}\n"); }

}  // namespace

TEST_CASE("bodies") {
  CHECK(with("body walker {}\n") == Faults{});
  CHECK(with("body crawler {\n  footprint 2\n  height 1\n  sinks\n}\n") == Faults{});
  CHECK(with("body crawler {\n  footprint 3\n}\n") == Faults{"body-out-of-range"});
  CHECK(with("body crawler {\n  height 0\n}\n") == Faults{"body-out-of-range"});
  CHECK(with("body crawler {\n  breath 0 ticks\n}\n") == Faults{"body-out-of-range"});
  CHECK(with("body crawler {\n  safe_fall 1001\n}\n") == Faults{"body-out-of-range"});
  CHECK(with("body crawler {\n  floats\n  sinks\n}\n") == Faults{"contradictory-body"});
  CHECK(with("body crawler {\n  height 1\n  height 1\n}\n") == Faults{"repeated-property"});
}

TEST_CASE("practice") {
  CHECK(with("practice {\n  longest_drop 4\n}\n") == Faults{});
  CHECK(with("practice {\n  longest_drop 1001\n}\n") == Faults{"practice-out-of-range"});
  CHECK(with("practice {\n  longest_dorp 4\n}\n") == Faults{"unknown-practice"});
  CHECK(with("practice {\n  longest_drop 4\n}\npractice {\n  longest_drop 4\n}\n") ==
        Faults{"repeated-practice"});
}

TEST_CASE("a practice out of range names its bounds and the standard") {
  auto const reports = reports_on(Sample{.more = "practice {\n  pit_width 0\n}\n"}.text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().primary.text == "pit_width is 1 to 100 cells");
  CHECK(reports.front().remedy.find("standard is 2") != std::string::npos);
}

TEST_CASE("clauses name what is there") {
  CHECK(expecting(
            "  millhouse reaches press when divert\n  millhouse reaches kiln otherwise\n"
            "  walker never trapped\n  millhouse never lost\n  walker from millhouse never split\n"
            "  never doubtful\n  findings none above note\n  findings none\n"
            "  finds split-route at 3 0 0\n  millhouse reaches nothing when divert\n") == Faults{});
  CHECK(expecting("  milhouse reaches press\n") == Faults{"unknown-inlet"});
  CHECK(expecting("  millhouse reaches pres\n") == Faults{"unknown-outlet"});
  CHECK(expecting("  crawler from millhouse reaches press\n") == Faults{"unknown-body"});
  CHECK(expecting("  millhouse reaches press when divrt\n") == Faults{"unknown-signal"});
  CHECK(expecting("  finds split-rout\n") == Faults{"unknown-finding"});
  CHECK(expecting("  finds split-route at 7 0 0\n") == Faults{"place-outside"});
  CHECK(expecting("  finds split-route at turm 3 0 0\n") == Faults{"unknown-junction"});
  CHECK(with("expect \"it\" of turm {\n  never lost\n}\n") == Faults{"unknown-junction"});
  CHECK(expecting("") == Faults{"expects-nothing"});
}

TEST_CASE("otherwise needs an earlier condition of the same body and inlet") {
  CHECK(expecting("  millhouse reaches kiln otherwise\n") == Faults{"otherwise-alone"});
  CHECK(expecting("  millhouse reaches press when divert\n  walker from millhouse reaches kiln "
                  "otherwise\n") == Faults{"otherwise-alone"});
}

namespace {

// Every kind of signal: four inputs, and four that only follow them.
Faults timed(std::string const& clauses) {
  return names_of_faults(
      Sample{.signals = "  lever divert\n  button ring for 4 ticks\n  clock beat every 2 s\n"
                        "  plate passed\n  wire shut = divert\n  wire late = divert after 4 ticks\n"
                        "  latch parked on divert off ring\n  toggle turned1 on ring\n",
             .marks = "  P plate passed\n",
             .level_0 = "|wi_aP_k|\n    |XXXbXXX|\n    |XXXqXXX|",
             .more = "expect \"it\" {\n" + clauses + "}\n"}
          .text());
}

std::string repeated(std::string const& piece, int times) {
  std::string text = piece;
  for (int i = 1; i < times; ++i) text += ", " + piece;
  return text;
}

}  // namespace

TEST_CASE("events are inputs, and are followed by what they may be followed by") {
  CHECK(timed("  after divert, ring, beat, passed, divert: millhouse reaches kiln\n"
              "  after divert: millhouse reaches nothing\n  after ring: millhouse may reach kiln\n"
              "  after beat: millhouse never reaches kiln\n  after ring: never spilled\n"
              "  after passed: walker never trapped\n  after ring: clear within 12 s\n"
              "  after ring: walker from millhouse deals kiln, nothing every 40 ticks\n") ==
        Faults{});
  for (std::string const follower : {"shut", "late", "parked", "turned1"})
    CHECK(timed("  after divert, " + follower + ": never trapped\n") == Faults{"not-an-event"});
  CHECK(timed("  after divrt, divrt: never trapped\n") == Faults{"unknown-signal"});
  CHECK(timed("  after shut, shut: never trapped\n") == Faults{"not-an-event"});
  CHECK(timed("  after ring: findings none\n") == Faults{"findings-after-events"});
  CHECK(timed("  after ring: finds split-route\n") == Faults{"findings-after-events"});
  CHECK(timed("  after ring: never trapped when divert\n") == Faults{"condition-unfit"});
  CHECK(timed("  after " + repeated("ring", 64) + ": never trapped\n") == Faults{});
  CHECK(timed("  after " + repeated("ring", 65) + ": never trapped\n") == Faults{"too-many"});
}

TEST_CASE("an event that is none names the nearest input, or all inputs") {
  auto const remedy = [](std::string const& event) {
    auto const reports =
        reports_on(Sample{.signals = "  lever divert\n  button flush for 4 ticks\n"
                                     "  wire flushy = flush\n  wire shut = divert\n",
                          .more = "expect \"it\" {\n  after " + event + ": never trapped\n}\n"}
                       .text());
    REQUIRE(reports.size() == 1);
    REQUIRE(reports.front().others.size() == 1);
    return reports.front().remedy;
  };
  CHECK(remedy("flushy") == "The nearest input is 'flush'.");
  CHECK(remedy("shut") == "Inputs here: divert, flush.");
}

TEST_CASE("otherwise passes clauses after events over") {
  CHECK(timed("  millhouse reaches press when divert\n  after divert: millhouse reaches press\n"
              "  millhouse reaches kiln otherwise\n") == Faults{});
  CHECK(timed("  after divert: millhouse reaches press\n  millhouse reaches kiln otherwise\n") ==
        Faults{"otherwise-alone"});
  CHECK(timed("  millhouse reaches press when divert\n"
              "  after divert: millhouse reaches press otherwise\n") == Faults{"condition-unfit"});
}

TEST_CASE("clauses of clearing") {
  CHECK(timed("  clear within 12 s\n  walker clear within 1 tick\n"
              "  millhouse clear within 50000 s when divert\n"
              "  walker from millhouse clear within 1000000 ticks\n"
              "  millhouse clear within 2 s otherwise\n") == Faults{});
  CHECK(timed("  clear within 0 s\n") == Faults{"duration-out-of-range"});
  CHECK(timed("  clear within 50001 s\n") == Faults{"duration-out-of-range"});
  CHECK(timed("  milhouse clear within 12 s\n") == Faults{"unknown-inlet"});
  CHECK(timed("  crawler from millhouse clear within 12 s\n") == Faults{"unknown-body"});
}

TEST_CASE("clauses of trains") {
  CHECK(timed("  millhouse deals kiln, nothing, press every 40 ticks\n"
              "  walker from millhouse deals nothing every 1 tick for 256 rounds\n"
              "  millhouse deals kiln, press, press every 2 s for 85 rounds\n"
              "  millhouse deals " +
              repeated("press", 256) + " every 1000000 ticks for 1 round\n") == Faults{});
  CHECK(timed("  millhouse deals kiln, pres every 40 ticks\n") == Faults{"unknown-outlet"});
  CHECK(timed("  walker deals kiln every 40 ticks\n") == Faults{"unknown-inlet"});
  CHECK(timed("  millhouse deals kiln every 0 ticks\n") == Faults{"duration-out-of-range"});
  CHECK(timed("  millhouse deals kiln every 40 ticks when divert\n") == Faults{"condition-unfit"});
  CHECK(timed("  millhouse deals kiln every 40 ticks otherwise\n") == Faults{"condition-unfit"});
  CHECK(timed("  millhouse deals " + repeated("press", 257) + " every 40 ticks\n") ==
        Faults{"too-many"});
  for (std::string const rounds : {"0", "86", "999999999999999999999"})
    CHECK(timed("  millhouse deals kiln, press, press every 2 s for " + rounds + " rounds\n") ==
          Faults{"rounds-out-of-range"});
}

TEST_CASE("of several junctions the inlet decides, else the name must be given") {
  std::string const other =
      "marks {\n  j inlet granary\n}\njunction other {\n  level 0..1 {\n    |jk|\n  }\n}\n";
  CHECK(with(other + "expect \"it\" {\n  granary reaches kiln\n  millhouse reaches press\n}\n") ==
        Faults{});
  CHECK(with(other + "expect \"it\" {\n  granary reaches press\n}\n") == Faults{"unknown-outlet"});
  CHECK(with(other + "expect \"it\" {\n  findings none\n}\n") == Faults{"which-junction"});
  CHECK(with(other + "expect \"it\" of other {\n  findings none\n}\n") == Faults{});
  CHECK(with(other + "expect \"it\" of other {\n  millhouse reaches kiln\n}\n") ==
        Faults{"unknown-inlet"});
  CHECK(with(other + "accept split-route at 0 0 0 because \"it may\"\n") ==
        Faults{"which-junction"});
  CHECK(with(other + "accept split-route at other 0 0 1 because \"it may\"\n") == Faults{});
  CHECK(with(other + "accept split-route because \"it may\"\n") == Faults{});
}

TEST_CASE("accepted findings") {
  CHECK(with("accept split-route at 3 0 0 because \"it may\"\n") == Faults{});
  CHECK(with("accept split-rout because \"it may\"\n") == Faults{"unknown-finding"});
  CHECK(with("accept split-route at 3 0 2 because \"it may\"\n") == Faults{"place-outside"});
  CHECK(with("accept split-route because \" \"\n") == Faults{"no-reason"});
  CHECK(with("accept split-route when divert because \"it may\"\n"
             "accept split-route when not divert because \"it may\"\n") == Faults{});
  CHECK(with("accept split-route when divert because \"it may\"\n"
             "accept split-route when  divert because \"again\"\n") == Faults{"accepted-twice"});
}

namespace {

Faults tabled(std::string const& rows) {
  return names_of_faults(Sample{.signals = "  lever divert\n  lever flush\n",
                                .more = "expect table millhouse {\n" + rows + "}\n"}
                             .text());
}

}  // namespace

TEST_CASE("tables") {
  std::string const head = "  divert flush | route\n";
  CHECK(tabled(head + "  1 0 | press\n  1 1 | kiln, press\n  0 - | nothing\n") == Faults{});
  CHECK(tabled(head + "  1 | press\n") == Faults{"uneven-table"});
  CHECK(tabled(head + "  1 0 | pres\n") == Faults{"unknown-outlet"});
  CHECK(tabled(head + "  1 0 | press, nothing\n") == Faults{"nothing-is-no-outlet"});
  CHECK(tabled(head + "  1 0 | press, press\n") == Faults{"repeated-outlet"});
  CHECK(tabled("  divert divert | route\n  1 1 | press\n") == Faults{"repeated-column"});
  CHECK(tabled("  divert flsh | route\n  1 1 | press\n") == Faults{"unknown-signal"});
  CHECK(tabled(head) == Faults{"expects-nothing"});
}

TEST_CASE("rows of a table that apply at once must agree") {
  std::string const head = "  divert flush | route\n";
  CHECK(tabled(head + "  1 - | press\n  - 1 | kiln\n") == Faults{"contradictory-rows"});
  CHECK(tabled(head + "  1 - | press\n  - 1 | press\n") == Faults{});
  CHECK(tabled(head + "  1 - | press\n  0 1 | kiln\n") == Faults{});
}
