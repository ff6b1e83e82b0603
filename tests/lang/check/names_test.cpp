#include "tests/lang/check/faults.hpp"
#include "tests/support/catch.hpp"

using namespace leat::check;

TEST_CASE("a sound file has no fault") { CHECK(faults_of(Sample{}.text()) == Faults{}); }

TEST_CASE("two declarations of one kind may not share a name") {
  CHECK(
      names_of_faults(Sample{.signals = "  lever divert\n  button divert for 4 ticks\n"}.text()) ==
      Faults{"declared-twice"});
  CHECK(names_of_faults(Sample{.marks = "  X open\n"}.text()) == Faults{"declared-twice"});
  CHECK(names_of_faults(
            Sample{.more = "materials {\n  mesh passes water\n  mesh carries\n}\n"}.text()) ==
        Faults{"declared-twice"});
  CHECK(names_of_faults(
            Sample{.more = "body hopper { height 1 }\nbody hopper { height 2 }\n"}.text()) ==
        Faults{"declared-twice"});
  CHECK(
      names_of_faults(Sample{.more = "junction turn {\n  level 0 {\n    |ik|\n  }\n}\n"}.text()) ==
      Faults{"declared-twice"});
}

TEST_CASE("the second of two is shown, and the first beside it") {
  auto const reports = reports_on(Sample{.marks = "  X open\n"}.text());
  REQUIRE(reports.size() == 1);
  REQUIRE(reports.front().others.size() == 1);
  CHECK(reports.front().others.front().span.begin < reports.front().primary.span.begin);
}

TEST_CASE("a material may not take a built-in name, nor an inlet a body's") {
  CHECK(names_of_faults(Sample{.more = "materials {\n  rock carries\n}\n"}.text()) ==
        Faults{"name-taken"});
  auto sample = Sample{.more = "body millhouse { height 1 }\n"};
  CHECK(names_of_faults(sample.text()) == Faults{"name-taken"});
}

TEST_CASE("a signal and an outlet may share a name") {
  CHECK(faults_of(Sample{.signals = "  lever divert\n  lever kiln\n"}.text()) == Faults{});
}

TEST_CASE("an unknown name is one fault however often it is used") {
  auto const sample =
      Sample{.signals = "  lever divert\n  wire a1 = divrt\n  wire a2 = not divrt\n"};
  auto const reports = reports_on(sample.text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().name == "unknown-signal");
  CHECK(reports.front().others.size() == 1);
  CHECK(reports.front().remedy.find("divert") != std::string::npos);
}

TEST_CASE("a name that is not close to any is not guessed at") {
  auto const reports =
      reports_on(Sample{.signals = "  lever divert\n  wire a1 = gatehouse\n"}.text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().remedy.find("nearest") == std::string::npos);
}

TEST_CASE("after a fault of the grammar nothing is said about what may only be left out") {
  auto const broken =
      Sample{.signals = "  lever divert\n  lever 5flush\n  wire a1 = flushed and divert\n"};
  auto const faults = names_of_faults(broken.text());
  REQUIRE(faults.size() == 1);
  CHECK(faults.front() != "unknown-signal");
}

TEST_CASE("after a fault of the grammar a misspelt name is still reported") {
  auto const broken =
      Sample{.signals = "  lever divert\n  wire a1 = divrt\n  wire a2 = gatehouse\n",
             .more = "body 5crawler { height 1 }\n"};
  auto const faults = names_of_faults(broken.text());
  REQUIRE(faults.size() == 2);
  CHECK(faults.front() == "unknown-signal");
}

TEST_CASE("junctions past the bound are one fault, whatever else speaks of them") {
  std::string text = "leat 1\nmarks {\n  w water\n  i inlet millhouse\n  k outlet kiln\n}\n";
  for (int i = 0; i < 3000; ++i) text += fmt::format("junction j{} {{ level 0 {{ |wik| }} }}\n", i);
  text += "expect of j2999 { findings none }\n";
  CHECK(leat::check::faults_of(text) == leat::check::Faults{"too-many 1007:10"});
}
