#include "engine/works/journey.hpp"

#include <map>
#include <random>

#include "tests/support/catch.hpp"

using namespace leat;
using works::Ticks;

namespace {

// So many inlets and outlets, and joins between them; nothing is drawn.
model::Design joined(std::size_t inlets, std::size_t outlets, std::vector<model::Join> joins) {
  model::Design design;
  design.inlets.resize(inlets);
  design.outlets.resize(outlets);
  design.joins = std::move(joins);
  return design;
}

}  // namespace

TEST_CASE("arrivals: times add up along joins") {
  auto const plant = joined(2, 2, {{0, 1, 180}});
  auto const found = works::arrivals(plant, 0, {{0, 0, 40, 60}, {1, 1, 10, 25}});
  REQUIRE(found.size() == 1);
  CHECK(found[0].outlet == 1);
  CHECK(found[0].quickest == 230);
  CHECK(found[0].longest == 265);
  CHECK_FALSE(found[0].has_untold);
}

TEST_CASE("arrivals: a join whose time is not said counts nothing, and is told") {
  auto const found =
      works::arrivals(joined(2, 2, {{0, 1, {}}}), 0, {{0, 0, 40, 60}, {1, 1, 10, 25}});
  REQUIRE(found.size() == 1);
  CHECK(found[0].quickest == 50);
  CHECK(found[0].has_untold);
}

TEST_CASE("arrivals: of two ways the quickest and the longest") {
  auto const plant = joined(3, 4, {{0, 1, 5}, {1, 2, 1}});
  auto const found = works::arrivals(
      plant, 0, {{0, 0, 10, 10}, {0, 1, 1, 2}, {1, 2, 3, 3}, {2, 2, 4, 40}, {2, 3, 1, 1}});
  REQUIRE(found.size() == 2);
  CHECK(found[0].quickest == 6);  // 1 + 1 + 4
  CHECK(found[0].longest == 43);  // 2 + 1 + 40
  CHECK(found[1].quickest == 3);
}

TEST_CASE("arrivals: a round of joins has no bound, and a quickest way all the same") {
  auto const plant = joined(2, 3, {{0, 1, 5}, {1, 0, 5}});
  auto const found = works::arrivals(plant, 0, {{0, 0, 1, 1}, {1, 1, 1, 1}, {1, 2, 2, 2}});
  REQUIRE(found.size() == 1);
  CHECK(found[0].quickest == 8);
  CHECK_FALSE(found[0].longest);
}

TEST_CASE("arrivals: a round that does not lead to the outlet does not matter") {
  auto const plant = joined(3, 4, {{0, 1, 5}, {1, 2, 5}, {2, 1, 5}});
  auto const found =
      works::arrivals(plant, 0, {{0, 0, 1, 1}, {0, 3, 7, 9}, {1, 1, 1, 1}, {2, 2, 1, 1}});
  REQUIRE(found.size() == 1);
  CHECK(found[0].longest == 9);
}

TEST_CASE("arrivals are those of trying every way, on random networks without rounds") {
  std::mt19937 dice(3);
  for (int trial = 0; trial < 200; ++trial) {
    model::InletId const inlets = 6;
    auto const outlets = static_cast<model::OutletId>(10);
    std::vector<model::Join> joins;
    std::vector<works::Stretch> stretches;
    for (model::OutletId outlet = 0; outlet + 2 < outlets; ++outlet) {
      auto const to = static_cast<model::InletId>(1 + dice() % (inlets - 1));
      joins.push_back({outlet, to, static_cast<int>(dice() % 50)});
      for (int ways = 0; ways < 2; ++ways) {
        auto const from = static_cast<model::InletId>(dice() % to);
        auto const quickest = static_cast<Ticks>(dice() % 30);
        stretches.push_back({from, outlet, quickest, quickest + static_cast<Ticks>(dice() % 9)});
      }
    }
    for (auto outlet = outlets - 2; outlet < outlets; ++outlet)
      stretches.push_back({static_cast<model::InletId>(dice() % inlets), outlet, 4, 6});
    auto const plant = joined(inlets, outlets, joins);
    std::map<model::OutletId, std::pair<Ticks, Ticks>> known;
    auto const go = [&](auto const& again, model::InletId at, Ticks least, Ticks most) -> void {
      for (auto const& way : stretches) {
        if (way.inlet != at) continue;
        if (way.outlet + 2 < outlets) {
          auto const& join = joins[way.outlet];
          again(again, join.inlet, least + *way.quickest + *join.ticks,
                most + *way.longest + *join.ticks);
          continue;
        }
        auto const [entry, is_new] =
            known.try_emplace(way.outlet, least + *way.quickest, most + *way.longest);
        entry->second = {std::min(entry->second.first, least + *way.quickest),
                         std::max(entry->second.second, most + *way.longest)};
      }
    };
    go(go, 0, 0, 0);
    auto const found = works::arrivals(plant, 0, stretches);
    REQUIRE(found.size() == known.size());
    for (auto const& arrival : found) {
      CHECK(arrival.quickest == known.at(arrival.outlet).first);
      CHECK(arrival.longest == known.at(arrival.outlet).second);
    }
  }
}
