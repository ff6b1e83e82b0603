#include <algorithm>
#include <random>
#include <set>

#include "engine/body/route_lanes.hpp"
#include "engine/body/travel.hpp"
#include "engine/contract.hpp"
#include "engine/water/lanes.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/laws/shrink.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

constexpr unsigned designs = 1200;

using Positions = std::set<body::Position>;

// Every water a design comes with by events, and those of random settings of its fills, fresh and
// after a change from one to the next: more than its two levers make, and up to 64 at once.
struct Waters {
  Waters(model::Design const& design, unsigned seed) {
    logic::Machine const machine(design.circuit);
    auto const histories = explore::trace(design, machine, explore::reach(machine), {});
    for (auto const& water : histories.waters)
      add(design, histories.settings[water.setting], water.field);
    std::mt19937 dice(seed);
    for (std::size_t more = seed % 16 == 0 ? 90 : 1 + seed % 9; more > 0; --more) {
      std::vector<bool> powered(design.fills.size());
      for (std::size_t f = 0; f < powered.size(); ++f) powered[f] = dice() % 2 == 0;
      model::Arrangement const next(design, powered);
      auto field = more % 2 == 0
                       ? water::settle_fresh(next).field
                       : water::settle_switched(arrangements.back(), fields.back(), next).field;
      add(design, powered, std::move(field));
    }
  }

  void add(model::Design const& design, std::vector<bool> const& powered, water::Field field) {
    arrangements.emplace_back(design, powered);
    fields.push_back(std::move(field));
  }

  // As one body feels them.
  std::vector<body::Surroundings> for_body(model::Profile const& profile) const {
    std::vector<body::Surroundings> all;
    for (std::size_t i = 0; i < fields.size(); ++i)
      all.emplace_back(arrangements[i], fields[i], profile);
    return all;
  }

  std::vector<model::Arrangement> arrangements;
  std::vector<water::Field> fields;
};

// One body in one water from one inlet, followed plainly.
struct Plain {
  Plain(body::Surroundings const& surroundings, std::vector<model::Cell> const& cells,
        body::OutletCells const& outlets)
      : here(surroundings),
        graph(body::route_graph(here, body::entries(here, cells), outlets)),
        outcome(body::outcome_of(graph)) {}

  body::Surroundings const& here;
  body::RouteGraph graph;
  body::Outcome outcome;
};

template <class Word>
Positions positions_in(body::RouteLanes const& lanes, std::size_t lane, Word word) {
  Positions found;
  for (std::size_t i = 0; i < lanes.positions().size(); ++i) {
    if (word(i) >> lane & 1) found.insert(lanes.positions()[i]);
  }
  return found;
}

bool says_otherwise(body::RouteLanes const& lanes, model::InletId inlet, std::size_t lane,
                    Plain const& plain) {
  auto const& [here, graph, outcome] = plain;
  Positions reached(graph.positions.begin(), graph.positions.end()), trapped, hanging;
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (outcome.is_trapped[i]) trapped.insert(graph.positions[i]);
  }
  for (auto i : outcome.hanging) hanging.insert(graph.positions[i]);
  auto const in_lane = [&](auto word) { return positions_in(lanes, lane, word); };
  if (in_lane([&](std::size_t i) { return lanes.reached(inlet, i); }) != reached) return true;
  if (in_lane([&](std::size_t i) { return lanes.trapped(inlet, i); }) != trapped) return true;
  if (in_lane([&](std::size_t i) { return lanes.hanging(inlet, i); }) != hanging) return true;
  std::vector<model::OutletId> outlets;
  for (model::OutletId o = 0; o < here.moment().arrangement.design().outlets.size(); ++o) {
    if (lanes.delivered(inlet, o) >> lane & 1) outlets.push_back(o);
  }
  return outlets != outcome.outlets || ((lanes.spills(inlet) >> lane & 1) != 0) != outcome.spills ||
         lanes.verdict(inlet, lane) != outcome.verdict;
}

// Same ways in the same order, and as long.
bool are_unlike(Plain const& a, Plain const& b) {
  auto const same_step = [](body::Step const& one, body::Step const& other) {
    return one.to == other.to && one.rule == other.rule && one.is_sure == other.is_sure;
  };
  bool const are_same = a.graph.positions == b.graph.positions && a.graph.ends == b.graph.ends &&
                        a.graph.starts == b.graph.starts &&
                        a.graph.first_step == b.graph.first_step &&
                        std::equal(a.graph.steps.begin(), a.graph.steps.end(),
                                   b.graph.steps.begin(), b.graph.steps.end(), same_step) &&
                        body::longest_trip(a.here, a.graph) == body::longest_trip(b.here, b.graph);
  return !are_same;
}

bool lanes_differ(std::span<body::Surroundings const> waters, model::Design const& design) {
  auto const outlets = body::outlet_cells(design);
  body::RouteLanes const lanes(waters, design.inlets, outlets);
  for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
    std::vector<Plain> plain;
    for (std::size_t lane = 0; lane < waters.size(); ++lane) {
      plain.emplace_back(waters[lane], design.inlets[inlet].cells, outlets);
      if (says_otherwise(lanes, inlet, lane, plain.back())) return true;
    }
    std::size_t seen = 0;
    for (auto group : lanes.alike(inlet)) {
      std::optional<std::size_t> first;
      for (std::size_t lane = 0; lane < waters.size(); ++lane) {
        if ((group >> lane & 1) == 0) continue;
        ++seen;
        if (!first) first = lane;
        if (are_unlike(plain[*first], plain[lane])) return true;
      }
    }
    if (seen != waters.size()) return true;
  }
  return false;
}

bool differs(model::Design const& design, unsigned seed) {
  Waters const waters(design, seed);
  for (auto const& profile : design.profiles) {
    auto const all = waters.for_body(profile);
    for (std::size_t first = 0; first < all.size(); first += body::RouteLanes::most) {
      auto const count = std::min(body::RouteLanes::most, all.size() - first);
      if (lanes_differ(std::span(all).subspan(first, count), design)) return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("law: bodies in lanes go where they go in each water, and are trapped where they are") {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed, seed % 4 == 3 ? 2 : 1);
    if (!differs(design, seed)) continue;
    auto const small = laws::shrunk_with_ports(
        design, [&](model::Design const& smaller) { return differs(smaller, seed); });
    INFO("seed " << seed << ", shrunk to: " << laws::drawn_in_numbers(small));
    REQUIRE_FALSE(differs(small, seed));
  }
}

TEST_CASE("routes in lanes want 1 to 64 waters of one design, and one body") {
  auto const design = laws::random_junction(1), other = laws::random_junction(2);
  Waters const waters(design, 16), strange(other, 1);
  auto all = waters.for_body(design.profiles[0]);
  auto const ports = design.inlets;
  REQUIRE(all.size() > 64);
  CHECK_THROWS_AS(body::RouteLanes(all, ports, {}), ContractBroken);
  CHECK_THROWS_AS(body::RouteLanes({}, ports, {}), ContractBroken);
  std::vector<body::Surroundings> const mixed{all[0], strange.for_body(other.profiles[0])[0]};
  CHECK_THROWS_AS(body::RouteLanes(mixed, ports, {}), ContractBroken);
  std::vector<body::Surroundings> const bodies{all[0], waters.for_body(design.profiles[1])[0]};
  CHECK_THROWS_AS(body::RouteLanes(bodies, ports, {}), ContractBroken);
}
