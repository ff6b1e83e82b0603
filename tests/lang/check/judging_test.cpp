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
