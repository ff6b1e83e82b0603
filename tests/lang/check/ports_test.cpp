#include "tests/lang/check/faults.hpp"
#include "tests/support/catch.hpp"

using namespace leat::check;

namespace {

std::string file(std::string const& signals, std::string const& marks, std::string const& rows,
                 std::string const& head = "") {
  return "leat 1\nsignals {\n" + signals + "}\nmarks {\n" + marks + "}\njunction run {\n" + head +
         rows + "}\n";
}

std::string const ends = "  i inlet millhouse\n  k outlet kiln\n";

}  // namespace

TEST_CASE("a junction needs an inlet and an outlet") {
  CHECK(names_of_faults(file("", "  k outlet kiln\n", "  level 0 {\n    |k|\n  }\n")) ==
        Faults{"no-inlet"});
  CHECK(names_of_faults(file("", "  i inlet millhouse\n", "  level 0 {\n    |i|\n  }\n")) ==
        Faults{"no-outlet"});
}

TEST_CASE("an outlet that is declared and not drawn is one fault") {
  CHECK(names_of_faults(file("", ends, "  level 0 {\n    |i|\n  }\n")) == Faults{"unused-mark"});
}

TEST_CASE("of two junctions each needs its own") {
  auto const text = file("", ends, "  level 0 {\n    |ik|\n  }\n") +
                    "junction other {\n  level 0 {\n    |i|\n  }\n}\n";
  CHECK(names_of_faults(text) == Faults{"no-outlet"});
}

TEST_CASE("a port must be open to bodies in some setting") {
  auto const with = [](std::string const& choice) {
    return names_of_faults(file("  lever divert\n",
                                "  i inlet millhouse in " + choice + "\n  k outlet kiln\n",
                                "  level 0 {\n    |ik|\n  }\n"));
  };
  CHECK(with("rock") == Faults{"inlet-in-rock"});
  CHECK(with("water") == Faults{});
  CHECK(with("rock when divert else open") == Faults{});
  auto const outlet =
      file("", "  i inlet millhouse\n  k outlet kiln in rock\n", "  level 0 {\n    |ik|\n  }\n");
  CHECK(names_of_faults(outlet) == Faults{"outlet-in-rock"});
}

TEST_CASE("several marks may be cells of one port") {
  CHECK(faults_of(file("", ends + "  j inlet millhouse in water\n",
                       "  level 0 {\n    |jik|\n  }\n")) == Faults{});
}

TEST_CASE("plates press a plate signal") {
  auto const rows = "  level 0 {\n    |iPk|\n  }\n";
  CHECK(faults_of(file("  plate passed\n", ends + "  P plate passed\n", rows)) == Faults{});
  CHECK(names_of_faults(file("  lever passed\n", ends + "  P plate passed\n", rows)) ==
        Faults{"not-a-plate"});
  CHECK(names_of_faults(file("  plate passed\n", ends + "  P plate pased\n", rows)) ==
        Faults{"unknown-signal"});
  CHECK(names_of_faults(file("  plate passed\n", ends + "  P plate passed in open\n", rows)) ==
        Faults{"plate-without-meaning"});
  CHECK(names_of_faults(file("", "  i inlet millhouse in plate\n  k outlet kiln\n  P rock\n",
                             rows)) == Faults{"plate-without-meaning"});
}

TEST_CASE("a plate signal without a mark is nowhere") {
  CHECK(names_of_faults(file("  plate passed\n", ends, "  level 0 {\n    |ik|\n  }\n")) ==
        Faults{"plate-nowhere"});
  CHECK(names_of_faults(file("  plate passed\n", ends + "  P plate passed\n",
                             "  level 0 {\n    |ik|\n  }\n")) == Faults{"unused-mark"});
}

TEST_CASE("a plate needs something that carries it") {
  auto const on = [](std::string const& floor, std::string const& head = "") {
    auto const marks = ends +
                       "  P plate passed\n  X rock\n  _ open\n"
                       "  a rock when divert else open\n";
    return names_of_faults(
        file("  plate passed\n  lever divert\n", marks,
             "  level 0 {\n    |X_a" + floor + "|\n  }\n  level 1 {\n    |ikXP|\n  }\n", head));
  };
  CHECK(on("X") == Faults{});
  CHECK(on("_") == Faults{"plate-in-mid-air"});
  CHECK(on("a") == Faults{});
  auto const lowest = [](std::string const& head) {
    return names_of_faults(file("  plate passed\n", ends + "  P plate passed\n",
                                "  level 0 {\n    |iPk|\n  }\n", head));
  };
  CHECK(lowest("") == Faults{});
  CHECK(lowest("  outside rock\n") == Faults{});
  CHECK(lowest("  outside open\n") == Faults{"plate-in-mid-air"});
}
