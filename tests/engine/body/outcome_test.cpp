#include "engine/body/outcome.hpp"

#include "tests/support/catch.hpp"
#include "tests/support/hand_graph.hpp"

using namespace leat::body;
using leat::drawn::hand_graph;

namespace {
std::vector<std::uint32_t> trapped(Outcome const& outcome) {
  std::vector<std::uint32_t> result;
  for (std::uint32_t i = 0; i < outcome.is_trapped.size(); ++i) {
    if (outcome.is_trapped[i]) result.push_back(i);
  }
  return result;
}
using Positions = std::vector<std::uint32_t>;
using Outlets = std::vector<leat::model::OutletId>;
}  // namespace

TEST_CASE("certain: exactly one outlet, nothing trapped, spilled or hanging") {
  auto const outcome = outcome_of(hand_graph(3, {{0, 1}, {1, 2}}, {{2, 5}}));
  CHECK(outcome.verdict == Verdict::certain);
  CHECK(outcome.outlets == Outlets{5});
  CHECK_FALSE(outcome.has_trap);
}

TEST_CASE("certain: two cells of one outlet are one outlet") {
  auto const outcome = outcome_of(hand_graph(3, {{0, 1}, {0, 2}}, {{1, 4}, {2, 4}}));
  CHECK(outcome.verdict == Verdict::certain);
  CHECK(outcome.outlets == Outlets{4});
}

TEST_CASE("fairness: a body leaves a loop that has a way out") {
  auto const outcome = outcome_of(hand_graph(4, {{0, 1}, {1, 2}, {2, 0}, {2, 3}}, {{3, 0}}));
  CHECK(outcome.verdict == Verdict::certain);
}

TEST_CASE("split: more than one outlet, whatever else happens") {
  auto const clean = outcome_of(hand_graph(3, {{0, 1}, {0, 2}}, {{1, 1}, {2, 0}}));
  CHECK(clean.verdict == Verdict::split);
  CHECK(clean.outlets == Outlets{0, 1});
  CHECK(outcome_of(hand_graph(4, {{0, 1}, {0, 2}, {0, 3}}, {{1, 1}, {2, 0}})).verdict ==
        Verdict::split);
}

TEST_CASE("doubtful: one outlet, and a trap: what is reached and reaches no outlet") {
  auto const rest = outcome_of(hand_graph(4, {{0, 1}, {0, 2}, {2, 3}}, {{1, 0}}));
  CHECK(rest.verdict == Verdict::doubtful);
  CHECK(trapped(rest) == Positions{2, 3});
  auto const loop = outcome_of(hand_graph(4, {{0, 1}, {0, 2}, {2, 3}, {3, 2}}, {{1, 0}}));
  CHECK(loop.verdict == Verdict::doubtful);
  CHECK(trapped(loop) == Positions{2, 3});
}

TEST_CASE("doubtful: one outlet, and a spill, which is no trap itself") {
  auto const outcome = outcome_of(hand_graph(3, {{0, 1}, {0, 2}}, {{1, 0}}, {{2, End::spill}}));
  CHECK(outcome.verdict == Verdict::doubtful);
  CHECK(outcome.spills);
  CHECK_FALSE(outcome.has_trap);
}

TEST_CASE("doubtful: one outlet, and a position with only unsure moves") {
  auto const hangs = outcome_of(hand_graph(2, {{0, 1, false}}, {{1, 0}}));
  CHECK(hangs.verdict == Verdict::doubtful);
  CHECK(hangs.hanging == Positions{0});
  auto const sure_as_well = outcome_of(hand_graph(2, {{0, 1, false}, {0, 1, true}}, {{1, 0}}));
  CHECK(sure_as_well.verdict == Verdict::certain);
  CHECK(sure_as_well.hanging.empty());
}

TEST_CASE("lost: no outlet is reached, nor is there any way at all") {
  CHECK(outcome_of(hand_graph(2, {{0, 1}})).verdict == Verdict::lost);
  CHECK(outcome_of(hand_graph(2, {{0, 1}}, {}, {{1, End::spill}})).verdict == Verdict::lost);
  CHECK(outcome_of(hand_graph(2, {{0, 1}, {1, 0}})).verdict == Verdict::lost);
  CHECK(outcome_of(RouteGraph{{}, {}, {}, {0}, {}, {}}).verdict == Verdict::lost);
}
