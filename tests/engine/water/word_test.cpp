#include "engine/water/word.hpp"

#include <bit>

#include "tests/support/catch.hpp"

using namespace leat::water;

TEST_CASE("at least so many of four, place by place, for all sixteen ways they can be") {
  std::array<Word, 4> const four{0xaaaa, 0xcccc, 0xf0f0, 0xff00};
  for (int count = 0; count <= 5; ++count) {
    for (unsigned place = 0; place < 16; ++place) {
      CAPTURE(count, place);
      CHECK((at_least(count, four) >> place & 1) == (std::popcount(place) >= count ? 1u : 0u));
    }
  }
  CHECK(any(four) == 0xfffe);
}

TEST_CASE("the lowest bits, from none to all") {
  CHECK(low_bits(0) == 0);
  CHECK(low_bits(5) == 31);
  CHECK(low_bits(64) == all_bits);
}
