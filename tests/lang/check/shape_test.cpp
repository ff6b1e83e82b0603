#include "tests/lang/check/faults.hpp"
#include "tests/support/catch.hpp"

using namespace leat::check;

namespace {

std::string file(std::string const& levels) {
  return "leat 1\nmarks {\n  X rock\n  i inlet millhouse\n  k outlet kiln\n}\njunction run {\n" +
         levels + "}\n";
}

}  // namespace

TEST_CASE("rows of unequal width are one fault a level, at the odd one") {
  CHECK(faults_of(file("  level 0 {\n    |iXk|\n    |XX|\n    |XXX|\n  }\n")) ==
        Faults{"uneven-rows 10:6"});
  CHECK(faults_of(file("  level 0 {\n    |iXkX|\n    |XXX|\n    |XXX|\n  }\n")) ==
        Faults{"uneven-rows 9:6"});
}

TEST_CASE("the usual width is taken over the whole junction") {
  CHECK(faults_of(
            file("  level 0 {\n    |iX|\n    |Xk|\n  }\n  level 1..3 {\n    |XXX|\n    |XXX|\n  }\n"
                 "  level 4 {\n    |XXX|\n    |XXX|\n  }\n")) == Faults{"uneven-rows 9:6"});
}

TEST_CASE("the fault names the cell, both widths and what to do") {
  auto const reports = reports_on(file("  level 0 {\n    |iXk|\n    |XX|\n    |XXX|\n  }\n"));
  REQUIRE(reports.size() == 1);
  CHECK(reports.front().primary.place == leat::model::Place{0, 1, 0});
  CHECK(reports.front().others.size() == 1);
  CHECK(reports.front().remedy == "Add 1 cell to the row.");
}

TEST_CASE("levels of unequal depth are a fault") {
  CHECK(names_of_faults(file("  level 0 {\n    |iXk|\n    |XXX|\n  }\n  level 1 {\n    |XXX|\n  }\n"
                             "  level 2 {\n    |XXX|\n    |XXX|\n  }\n")) ==
        Faults{"uneven-levels"});
}

TEST_CASE("levels run from 0 to the top, each once") {
  CHECK(names_of_faults(file("  level 1 {\n    |iXk|\n  }\n")) == Faults{"level-missing"});
  CHECK(names_of_faults(file("  level 0 {\n    |iXk|\n  }\n  level 2..4 {\n    |XXX|\n  }\n")) ==
        Faults{"level-missing"});
  CHECK(names_of_faults(file("  level 0..2 {\n    |iXk|\n  }\n  level 2 {\n    |XXX|\n  }\n")) ==
        Faults{"level-repeated"});
  CHECK(names_of_faults(file("  level 2..0 {\n    |iXk|\n  }\n")) == Faults{"level-backwards"});
  CHECK(faults_of(file("  level 1 {\n    |XXX|\n  }\n  level 0 {\n    |iXk|\n  }\n")) == Faults{});
}

TEST_CASE("a junction without drawing is a fault, and the only one") {
  CHECK(names_of_faults("leat 1\njunction run {\n}\n") == Faults{"no-levels"});
}

TEST_CASE("a level without cells is a fault, and the only one") {
  CHECK(names_of_faults("leat 1\njunction run {\n  level 0 {\n  }\n}\n") == Faults{"empty-level"});
}

TEST_CASE("extents are refused before anything is made of them") {
  CHECK(names_of_faults(file("  level 0..512 {\n    |iXk|\n  }\n")) == Faults{"too-large"});
  CHECK(names_of_faults(file("  level 99999999999999999999 {\n    |iXk|\n  }\n")) ==
        Faults{"too-large"});
  auto const wide = "    |ik" + std::string(1999, 'X') + "|\n";
  CHECK(names_of_faults(file("  level 0 {\n" + wide + "  }\n")) == Faults{"too-large"});
  std::string square = "    |ik" + std::string(998, 'X') + "|\n";
  for (int row = 1; row < 1000; ++row) square += "    |" + std::string(1000, 'X') + "|\n";
  CHECK(names_of_faults(file("  level 0..63 {\n" + square + "  }\n")) == Faults{});
  CHECK(names_of_faults(file("  level 0..64 {\n" + square + "  }\n")) == Faults{"too-large"});
}

TEST_CASE("columns count characters, not bytes") {
  CHECK(faults_of("leat 1\nmarks {\n  \xc2\xa7 rock\n  i inlet millhouse\n  k outlet kiln\n}\n"
                  "junction run {\n  level 0 {\n    |i\xc2\xa7k|\n    |\xc2\xa7\xc2\xa7\xc2\xa7|\n "
                  " }\n}\n") == Faults{});
}
