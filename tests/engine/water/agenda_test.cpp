#include "engine/water/agenda.hpp"

#include "tests/support/catch.hpp"

using leat::water::Agenda;

TEST_CASE("an agenda hands out each number once, in ascending order, and is empty then") {
  Agenda agenda(10000);
  for (std::uint32_t number : {9999u, 64u, 63u, 0u, 4096u, 64u, 4095u}) agenda.add(number);
  std::vector<std::uint32_t> numbers{7};
  agenda.move_to(numbers);
  CHECK(numbers == std::vector<std::uint32_t>{7, 0, 63, 64, 4095, 4096, 9999});
  numbers.clear();
  agenda.move_to(numbers);
  CHECK(numbers.empty());
  agenda.add(64);
  agenda.move_to(numbers);
  CHECK(numbers == std::vector<std::uint32_t>{64});
}
