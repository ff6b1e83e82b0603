#include "lang/render/time_scale.hpp"

#include "lang/render/columns.hpp"
#include "tests/support/catch.hpp"

using namespace leat::render;

TEST_CASE("what fits is drawn to scale, but for the room that figures take") {
  auto const bands = time_bands({0, 5, 6, 30}, 40, 70);
  REQUIRE(bands.size() == 1);
  REQUIRE(bands[0].size() == 4);
  CHECK(bands[0][0].columns == 5);
  CHECK(bands[0][1].columns == 24 - 22);  // one tick, and a blank behind its figure
  CHECK(bands[0][2].columns == 24);
  CHECK(bands[0][3].columns == 10);
  for (auto const& stretch : bands[0]) CHECK_FALSE(stretch.is_cut());
  CHECK(scale_line(bands[0], {}) == "0    5 6                       30");
}

TEST_CASE("long stretches are cut and marked; pulses and delays stay readable side by side") {
  auto const bands = time_bands({0, 1, 3, 403, 405}, 805, 70);
  REQUIRE(bands.size() == 1);
  CHECK(scale_line(bands[0], {}) == "0 1 3         ≈        403 405        ≈");
  CHECK(scale_line(bands[0], {false, true}) == "0 1 3         ~        403 405        ~");
  CHECK_FALSE(bands[0][1].is_cut());
  CHECK(bands[0][2].is_cut());
  CHECK(bands[0][2].columns < 22);
}

TEST_CASE("longer times are never drawn shorter") {
  std::size_t before = 0;
  for (int ticks = 1; ticks < 1'000'000; ticks += 1 + ticks / 7) {
    auto const bands = time_bands({0, ticks}, 2'000'000, 70);
    auto const& stretch = bands[0][0];
    CHECK(stretch.columns >= before);
    CHECK(stretch.columns <= 48);
    before = stretch.columns;
  }
}

TEST_CASE("what does not fit goes on in further bands, none wider than asked") {
  std::vector<int> moments;
  for (int tick = 0; tick < 4000; tick += 13) moments.push_back(tick);
  auto const bands = time_bands(moments, 4100, 60);
  CHECK(bands.size() > 40);
  std::size_t stretches = 0;
  int next = 0;
  for (auto const& band : bands) {
    std::size_t used = 0;
    for (auto const& stretch : band) {
      CHECK(stretch.from == next);
      next = stretch.to;
      used += stretch.columns;
      CHECK(stretch.columns > std::to_string(stretch.from).size());
    }
    CHECK(used <= 60);
    CHECK(columns_of(scale_line(band, {})) <= 60);
    stretches += band.size();
  }
  CHECK(next == 4100);
  CHECK(stretches == moments.size());
}
