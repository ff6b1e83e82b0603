#include "tests/lang/check/faults.hpp"
#include "tests/support/catch.hpp"

using namespace leat::check;

TEST_CASE("an undeclared mark is one fault with a count and its first place") {
  auto sample = Sample{};
  sample.level_1 = "|_______|\n    |XXX?X??|\n    |XXX_XXX|";
  auto const reports = reports_on(sample.text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().name == "undeclared-mark");
  CHECK(reports.front().headline.find("3 cells") != std::string::npos);
  CHECK(reports.front().primary.place == leat::model::Place{3, 1, 1});
}

TEST_CASE("a drawing of a range counts for each of its levels") {
  auto const reports = reports_on(
      "leat 1\nmarks {\n  i inlet millhouse\n  k outlet kiln\n}\njunction run {\n  level 0..3 {\n"
      "    |i?k|\n  }\n}\n");
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().headline.find("4 cells") != std::string::npos);
}

TEST_CASE("an unused mark is a fault") {
  CHECK(names_of_faults(Sample{.marks = "  s sign\n"}.text()) == Faults{"unused-mark"});
}

TEST_CASE("a mark that is undrawn and a glyph that is undeclared are one fault") {
  auto sample = Sample{.marks = "  s sign\n"};
  sample.level_1 = "|_______|\n    |XXX_XXX|\n    |XXXSXXX|";
  auto const reports = reports_on(sample.text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().name == "undeclared-mark");
  CHECK(reports.front().others.size() == 1);
}

TEST_CASE("a switched mark must switch") {
  auto const with = [](std::string const& choice) {
    auto sample =
        Sample{.signals = "  lever divert\n  lever flush\n  wire dead = divert and not divert\n",
               .marks = "  c " + choice + "\n"};
    sample.level_1 = "|__c____|\n    |XXX_XXX|\n    |XXX_XXX|";
    return names_of_faults(sample.text());
  };
  CHECK(with("rock when flush else open") == Faults{});
  CHECK(with("rock when flush else rock") == Faults{"same-both-ways"});
  CHECK(with("rock when on else open") == Faults{"never-switches"});
  CHECK(with("rock when flush or not flush else open") == Faults{"never-switches"});
  CHECK(with("rock when dead else open") == Faults{"never-switches"});
  CHECK(with("rock when dead xor flush else open") == Faults{});
  CHECK(with("rock when flsh or not flsh else open") == Faults{"unknown-signal"});
}

TEST_CASE("the fault says which material it always is") {
  auto sample = Sample{.marks = "  c rock when divert and not divert else open\n"};
  sample.level_1 = "|__c____|\n    |XXX_XXX|\n    |XXX_XXX|";
  auto const reports = reports_on(sample.text());
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().headline.find("always open") != std::string::npos);
}

TEST_CASE("unknown materials are reported once") {
  auto sample = Sample{.marks = "  c mesh\n  d mesh when divert else rock\n"};
  sample.level_1 = "|__c____|\n    |XXX_XXX|\n    |XXXdXXX|";
  CHECK(names_of_faults(sample.text()) == Faults{"unknown-material"});
}

TEST_CASE("traits of materials") {
  auto const with = [](std::string const& traits) {
    return names_of_faults(Sample{.more = "materials {\n  mesh " + traits + "\n}\n"}.text());
  };
  CHECK(with("passes water, carries") == Faults{});
  CHECK(with("is source, passes water, passes bodies") == Faults{});
  CHECK(with("is source, passes bodies") == Faults{"contradictory-traits"});
  CHECK(with("carries, passes water, carries") == Faults{"repeated-trait"});
}
