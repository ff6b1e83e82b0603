#include "engine/body/capacity.hpp"

#include <cmath>

#include "tests/support/catch.hpp"
#include "tests/support/poured.hpp"

using namespace leat;
using namespace leat::drawn;
using body::Narrow;

namespace {

body::Throughput throughput(Poured const& poured, std::vector<model::Place> const& entries,
                            model::OutletId outlet = 0) {
  std::vector<model::Cell> cells;
  for (auto place : entries) cells.push_back(poured.at(place));
  auto const here = poured.here();
  auto const graph =
      body::route_graph(here, body::entries(here, cells), body::outlet_cells(poured.design));
  return body::throughput(here, graph, outlet);
}

// Bodies a second to the nearest millionth.
body::Rate rate(double bodies_a_second) { return std::llround(bodies_a_second * 1e6); }

// docs/model.md, numbers of motion [memory]: terminal speeds in cells a second, and what a body
// takes.
constexpr double drifting = 0.014 / 0.2 * 20, rising = (0.04 * 0.8 - 0.02) / 0.2 * 20;
constexpr double wide = 0.6, tall = 1.95;

// Closed form of v' = (v - 0.08) * 0.98 from rest: ticks until a body has fallen so far.
int ticks_fallen(double cells) {
  auto const way = [](int n) {
    return 0.08 * 0.98 / 0.02 * (n - 0.98 * (1 - std::pow(0.98, n)) / 0.02);
  };
  int n = 1;
  while (way(n) < cells) ++n;
  return n;
}

std::vector<Level> const straight{{"XXXX"}, {"765A"}, {"...."}};

}  // namespace

TEST_CASE("capacity: a straight channel passes a body for each body's width") {
  Poured const poured(straight);
  auto const found = throughput(poured, {{0, 0, 1}});
  CHECK(found.rate == rate(drifting / wide));
  // Nearest the start: the entry itself.
  CHECK(found.narrowest == std::vector{Narrow{poured.at({0, 0, 1}), rate(drifting / wide)}});
}

TEST_CASE("capacity: two lanes into one pass what one passes, and the one is the narrow place") {
  Poured const poured({{"XXX", "XXX", "XXX"}, {"767", "X5X", "XAX"}, {"...", "...", "..."}});
  auto const found = throughput(poured, {{0, 0, 1}, {2, 0, 1}});
  CHECK(found.rate == rate(drifting / wide));
  CHECK(found.narrowest == std::vector{Narrow{poured.at({1, 0, 1}), rate(drifting / wide)}});
}

TEST_CASE("capacity: two lanes beside each other pass twice as much") {
  Poured const poured(
      {{"XXXX", "XXXX", "XXXX"}, {"765A", "XXXX", "765A"}, {"....", "....", "...."}});
  auto const found = throughput(poured, {{0, 0, 1}, {0, 2, 1}});
  CHECK(found.rate == 2 * rate(drifting / wide));
  CHECK(found.narrowest.size() == 2);
}

TEST_CASE("capacity: a lift passes a body for each body's height") {
  Poured poured({{"X"}, {"S"}, {"S"}, {"."}, {"."}});
  poured.design.outlets = {{{poured.at({0, 0, 2})}}};
  CHECK(throughput(poured, {{0, 0, 1}}).rate == rate(rising / tall));
  Poured low({{"X"}, {"S"}, {"S"}, {"."}}, {.height = 1});
  low.design.outlets = {{{low.at({0, 0, 2})}}};
  // Nothing above its feet is wet, and a low body has no head to bob with.
  CHECK(throughput(low, {{0, 0, 1}}).rate == 0);
}

TEST_CASE("capacity: a drop passes a body each time one has fallen its height") {
  Poured const poured({{"A"}, {"."}, {"."}, {"."}});
  auto const found = throughput(poured, {{0, 0, 2}});
  CHECK(ticks_fallen(tall) == 7);
  CHECK(found.rate == rate(20.0 / 7));
  Poured low({{"A"}, {"."}, {"."}}, {.height = 1});
  CHECK(throughput(low, {{0, 0, 2}}).rate == rate(20.0 / ticks_fallen(tall - 1)));
}

TEST_CASE("capacity: a drop at the end of a channel is not its narrow place") {
  Poured const poured({{"XXA"}, {"XX."}, {"76."}, {"..."}});
  auto const found = throughput(poured, {{0, 0, 2}});
  CHECK(found.rate == rate(drifting / wide));
  CHECK(found.narrowest.front().cell == poured.at({0, 0, 2}));
}

TEST_CASE("capacity: a lift at the end of a channel is") {
  Poured poured({{"XXX"}, {"76S"}, {"..S"}, {"..."}, {"..."}});
  poured.design.outlets = {{{poured.at({2, 0, 2})}}};
  auto const found = throughput(poured, {{0, 0, 1}});
  CHECK(found.rate == 0);  // the source's own current pushes bodies away from it
  poured.field[poured.at({1, 0, 1})] = water::source;
  poured.field[poured.at({0, 0, 1})] = water::source;
  CHECK(throughput(poured, {{2, 0, 1}}).rate == rate(rising / tall));
}

TEST_CASE("capacity: a diagonal current passes to each side its share") {
  Poured poured({{"XX", "XX"}, {"76", "4X"}, {"..", ".."}});  // a slope of 1 east, 3 south
  auto const east = poured.at({1, 0, 1}), south = poured.at({0, 1, 1});
  auto const share = [](double slope) { return rate(drifting * slope / std::sqrt(10.0) / wide); };
  auto const passed = [&](std::vector<model::Cell> outlet) {
    poured.design.outlets = {{std::move(outlet)}};
    return throughput(poured, {{0, 0, 1}});
  };
  CHECK(passed({east}).rate == share(1));
  CHECK(passed({south}).rate == share(3));
  auto const both = passed({east, south});
  CHECK(both.rate == share(3));
  CHECK(both.narrowest == std::vector{Narrow{poured.at({0, 0, 1}), share(3)}});
}

TEST_CASE("capacity: a step passes no more than its own move, though its cell passes more") {
  Poured poured({{"XX"}, {"S6"}, {"S."}, {".."}, {".."}});
  poured.design.outlets = {{{poured.at({0, 0, 2})}}};
  auto const from = poured.at({0, 0, 1});
  CHECK(poured.moves({0, 0, 1}) ==
        std::vector<std::string>{"rise 0 0 2 none 0", "push 1 0 1 none 0"});
  auto const found = throughput(poured, {{0, 0, 1}});
  CHECK(found.rate == rate(rising / tall));
  CHECK(found.narrowest == std::vector{Narrow{from, rate(rising / tall)}});
}

TEST_CASE("capacity: a climb passes what the slower of its two ways passes") {
  Poured const poured({{"XX"}, {"6X"}, {".."}, {".."}});
  CHECK(body::rate_of(poured.here(), {poured.at({0, 0, 1})}, {poured.at({1, 0, 2})},
                      body::MoveRule::climb) == rate(rising / tall));
}

TEST_CASE("capacity: deep under water a falling body makes room as slowly as one that sinks") {
  Poured const poured({{"XX"}, {"S."}, {"S."}, {".."}, {".."}, {".."}});
  auto const sinking = rate(0.02 / 0.2 * 20 / tall);
  auto const from = body::Position{poured.at({0, 0, 3})};
  CHECK(body::rate_of(poured.here(), from, {poured.at({0, 0, 2})}, body::MoveRule::fall) ==
        rate(20.0 / 7));
  CHECK(body::rate_of(poured.here(), from, {poured.at({0, 0, 1})}, body::MoveRule::sink) ==
        sinking);
  CHECK(body::rate_of(poured.here(), {poured.at({0, 0, 2})}, {poured.at({0, 0, 1})},
                      body::MoveRule::sink) == sinking);
}

TEST_CASE("capacity: a wider body takes more of the stream, and so does another practice") {
  Poured broad(straight);
  broad.practise(model::Rule::body_width, 1000);
  CHECK(throughput(broad, {{0, 0, 1}}).rate == rate(drifting));
  Poured const large({{"XXXX", "XXXX"}, {"76A.", "76.."}, {"....", "...."}}, {.footprint = 2});
  CHECK(throughput(large, {{0, 0, 1}}).rate == rate(drifting / 1.6));
  Poured fast(straight);
  fast.practise(model::Rule::ticks_per_second, 40);
  CHECK(throughput(fast, {{0, 0, 1}}).rate == rate(2 * drifting / wide));
}

TEST_CASE("capacity: nothing passes to an outlet that is not reached") {
  Poured const poured({{"XXXX"}, {"765A"}, {"...B"}});
  auto const found = throughput(poured, {{0, 0, 1}}, 1);
  CHECK(found.rate == 0);
  CHECK(found.narrowest.empty());
  CHECK(throughput(poured, {}).rate == 0);
}

TEST_CASE("capacity: nothing limits what enters at its outlet") {
  Poured const poured(straight);
  CHECK(throughput(poured, {{3, 0, 1}}).rate == body::no_limit);
}

TEST_CASE("capacity: where a move never gets anywhere, nothing passes, and the place is named") {
  Poured poured({{"X"}, {"S"}, {"S"}, {"."}, {"."}});
  poured.design.outlets = {{{poured.at({0, 0, 2})}}};
  poured.practise(model::Rule::upward_stroke, 1);
  auto const found = throughput(poured, {{0, 0, 1}});
  CHECK(found.rate == 0);
  CHECK(found.narrowest == std::vector{Narrow{poured.at({0, 0, 1}), 0}});
}
