#include "lang/source/placed_texts.hpp"

#include <random>

#include "tests/support/catch.hpp"

using namespace leat::source;
using leat::model::Place;

// Against a look at each of them, places that reach over each other among them.
TEST_CASE("what is placed is found by where it stands, in the order in which it is written") {
  std::mt19937 random(7);
  auto const up_to = [&](int most) { return std::uniform_int_distribution<int>(0, most)(random); };
  std::size_t found_count = 0;
  for (int round = 0; round < 40; ++round) {
    std::vector<PlacedText> texts;
    for (auto left = up_to(60); left > 0; --left) {
      Standing const standing{{up_to(1) == 1, up_to(3)},
                              {up_to(30), up_to(30), up_to(3)},
                              1 + up_to(6),
                              1 + up_to(3),
                              1 + up_to(2)};
      texts.push_back({{}, {}, standing, nullptr});
    }
    PlacedTexts const placed(texts);
    for (int look = 0; look < 200; ++look) {
      Place const least{up_to(34) - 2, up_to(34) - 2, up_to(5) - 1};
      Place const most{least.x + up_to(4), least.y + up_to(4), least.z + up_to(1)};
      std::vector<std::size_t> expected;
      for (std::size_t i = 0; i < texts.size(); ++i) {
        bool is_there = false;
        for (int x = least.x; x <= most.x; ++x)
          for (int y = least.y; y <= most.y; ++y)
            for (int z = least.z; z <= most.z; ++z)
              is_there = is_there || texts[i].standing.covers({x, y, z});
        if (is_there) expected.push_back(i);
      }
      CHECK(placed.within(least, most) == expected);
      found_count += expected.size();
    }
  }
  CHECK(found_count > 1000);
}
