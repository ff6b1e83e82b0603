#include "lang/cli/crew.hpp"

#include <atomic>
#include <stdexcept>

#include "tests/support/catch.hpp"

namespace leat::cli {

namespace {

constexpr std::chrono::milliseconds moment(20);

template <class Result>
std::vector<Result> all_of(Crew<Result>& crew) {
  std::vector<Result> results;
  while (!crew.is_all_taken()) {
    if (auto result = crew.take(moment)) results.push_back(std::move(*result));
  }
  return results;
}

}  // namespace

TEST_CASE("results come in the order of their numbers, whichever is ready first") {
  for (std::size_t workers : {1u, 2u, 3u, 8u, 100u}) {
    std::atomic<std::size_t> running = 0, most = 0;
    Crew<std::size_t> crew(40, workers, [&](std::size_t number) {
      auto const now = ++running;
      for (auto seen = most.load(); seen < now && !most.compare_exchange_weak(seen, now);) {
      }
      // The first ones take longest.
      std::this_thread::sleep_for(std::chrono::microseconds(100 * (40 - number)));
      --running;
      return number * number;
    });
    auto const results = all_of(crew);
    REQUIRE(results.size() == 40);
    for (std::size_t i = 0; i < results.size(); ++i) CHECK(results[i] == i * i);
    CHECK(most <= workers);
    CHECK(crew.ready_count() == 40);
  }
}

TEST_CASE("nothing to do is done at once") {
  Crew<int> crew(0, 4, [](std::size_t) { return 1; });
  CHECK(crew.is_all_taken());
}

TEST_CASE("who waits for a slow result is not held up longer than a moment") {
  std::atomic<bool> may_end = false;
  Crew<int> crew(1, 1, [&](std::size_t) {
    while (!may_end) std::this_thread::yield();
    return 7;
  });
  CHECK_FALSE(crew.take(std::chrono::milliseconds(1)));
  CHECK(crew.ready_count() == 0);
  may_end = true;
  CHECK(all_of(crew) == std::vector<int>{7});
}

TEST_CASE("what a worker throws is thrown where its result is taken, and the others end") {
  std::atomic<int> begun = 0;
  {
    Crew<int> crew(1000, 2, [&](std::size_t number) {
      ++begun;
      std::this_thread::sleep_for(std::chrono::microseconds(50));
      if (number == 1) throw std::runtime_error("broken");
      return static_cast<int>(number);
    });
    std::vector<int> taken;
    CHECK_THROWS_AS(
        [&] {
          while (true) {
            if (auto result = crew.take(moment)) taken.push_back(*result);
          }
        }(),
        std::runtime_error);
    CHECK(taken == std::vector<int>{0});
  }
  // The crew went away with most of its work not begun.
  CHECK(begun < 1000);
}

}  // namespace leat::cli
