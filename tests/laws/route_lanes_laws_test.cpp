#include <algorithm>
#include <array>
#include <optional>
#include <random>
#include <set>

#include "engine/body/route_lanes.hpp"
#include "engine/body/travel.hpp"
#include "engine/contract.hpp"
#include "engine/findings/families.hpp"
#include "engine/water/lanes.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/laws/shrink.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/surveyed.hpp"

using namespace leat;

namespace {

constexpr unsigned designs = 1200;

using Positions = std::set<body::Position>;

// Every water a design comes with by events, and those of random settings of its fills, fresh and
// after a change from one to the next: more than its two levers make, and up to 64 at once.
struct Waters {
  Waters() = default;
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

// What the families see of the ways in every water, looked at one by one.
std::vector<findings::Finding> seen_one_by_one(drawn::Surveyed const& surveyed) {
  auto const& design = surveyed.design;
  auto const& histories = surveyed.histories;
  auto const outlets = body::outlet_cells(design);
  findings::Sightings sightings;
  for (std::uint32_t w = 0; w < histories.waters.size(); ++w) {
    auto const& water = histories.waters[w];
    model::Arrangement const arrangement(design, histories.settings[water.setting]);
    for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
      body::Surroundings const here(arrangement, water.field, design.profiles[profile]);
      for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
        Plain const plain(here, design.inlets[inlet].cells, outlets);
        findings::Passage const passage{design, inlet, here, plain.graph, plain.outcome};
        for (auto family : findings::families_of_positions)
          sightings.add(w, inlet, profile, family(passage));
        for (auto family : findings::families_beyond)
          sightings.add(w, inlet, profile, family(passage));
      }
    }
  }
  auto found = sightings.gathered(design.grid);
  for (auto& finding : found) finding.rows = surveyed.combinations.rows_with(finding.waters);
  return found;
}

bool is_among(findings::Finding const& one, std::vector<findings::Finding> const& all) {
  return std::any_of(all.begin(), all.end(), [&](findings::Finding const& other) {
    return one.kind == other.kind && one.severity == other.severity && one.cells == other.cells &&
           one.inlets == other.inlets && one.outlets == other.outlets &&
           one.profiles == other.profiles && one.measured == other.measured &&
           one.limit == other.limit && one.rows == other.rows && one.waters == other.waters;
  });
}

// Waters that differ from the first in one cell each, in water or in material; they need not be
// ones that come about. The cells around that one are where a body may feel it.
struct Altered {
  explicit Altered(unsigned seed) : design(laws::random_junction(seed, seed % 4 == 3 ? 2 : 1)) {
    design.practice.set(model::Rule::sink_cells, static_cast<int>(seed % 4));
    std::mt19937 dice(seed);
    auto const any_inside = [&] {
      auto const& grid = design.grid;
      auto const below = [&](int extent) {
        return static_cast<int>(dice() % static_cast<unsigned>(extent));
      };
      return grid.cell({below(grid.width()), below(grid.depth()), below(grid.height())});
    };
    water::Field field(design.grid.size());
    for (model::Cell c = 0; c < field.size(); ++c) {
      constexpr std::array states{water::dry,     water::dry,    water::State{3}, water::State{5},
                                  water::falling, water::source, water::source};
      if (design.grid.is_inside(c)) field[c] = states[dice() % states.size()];
    }
    auto const first_switch = design.fills.size();
    for (std::size_t i = 0; i < 12; ++i) {
      cells.push_back(any_inside());
      design.fills.push_back(
          {model::material::rock, model::material::open, model::ExpressionId{0}});
      if (i % 2 == 0) design.fill_of[cells.back()] = static_cast<model::FillId>(first_switch + i);
    }
    std::vector<bool> powered(design.fills.size(), false);
    waters.add(design, powered, field);
    for (std::size_t i = 0; i < cells.size(); ++i) {
      auto other_field = field;
      if (i % 2 != 0)
        other_field[cells[i]] = field[cells[i]] == water::dry ? water::source : water::dry;
      powered[first_switch + i] = i % 2 == 0;
      waters.add(design, powered, other_field);
      powered[first_switch + i] = false;
    }
  }

  // Visits the cells inside from which a body may feel cell i.
  template <class Visit>
  void for_each_around(std::size_t i, Visit visit) const {
    auto const at = design.grid.place(cells[i]);
    for (int z = at.z - 3; z <= at.z + 6; ++z) {
      for (int y = at.y - 3; y <= at.y + 3; ++y) {
        for (int x = at.x - 3; x <= at.x + 3; ++x) {
          if (design.grid.is_inside(model::Place{x, y, z})) visit(design.grid.cell({x, y, z}));
        }
      }
    }
  }

  model::Design design;
  std::vector<model::Cell> cells;
  Waters waters;
};

bool moves_differ(body::Surroundings const& one, body::Surroundings const& other,
                  body::Position at) {
  auto const same = [](body::Move const& a, body::Move const& b) {
    return a.to == b.to && a.rule == b.rule && a.is_sure == b.is_sure;
  };
  auto const a = body::moves_from(one, at), b = body::moves_from(other, at);
  return !std::equal(a.begin(), a.end(), b.begin(), b.end(), same) ||
         body::rest_at(one, at) != body::rest_at(other, at);
}

// Whether the body has the same moves, whatever it remembers, and feels the same push.
bool feels_alike(body::Surroundings const& one, body::Surroundings const& other, model::Cell feet) {
  if (one.fits(feet) != other.fits(feet)) return false;
  if (!one.fits(feet)) return true;
  if (one.push(feet).x != other.push(feet).x || one.push(feet).y != other.push(feet).y)
    return false;
  for (auto side : {model::Side::none, model::Side::east, model::Side::south, model::Side::west,
                    model::Side::north}) {
    for (std::uint8_t fallen = 0; fallen <= body::most_fallen; ++fallen) {
      if (moves_differ(one, other, {feet, side, fallen})) return false;
    }
  }
  return true;
}

}  // namespace

TEST_CASE("law: where waters are alike for a body it has the same moves, whatever it remembers") {
  int alike = 0, unlike = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    INFO("seed " << seed);
    Altered const altered(seed);
    for (auto const& profile : altered.design.profiles) {
      auto const all = altered.waters.for_body(profile);
      body::Feel feel(all);
      for (std::size_t i = 0; i < altered.cells.size(); ++i) {
        altered.for_each_around(i, [&](model::Cell feet) {
          bool const is_alike = feels_alike(all[0], all[i + 1], feet);
          ++(is_alike ? alike : unlike);
          for (auto group : feel.groups(feet)) {
            if ((group & 1) && (group >> (i + 1) & 1)) REQUIRE(is_alike);
          }
        });
      }
    }
  }
  CHECK(alike > 10000);
  CHECK(unlike > 10000);
}

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

TEST_CASE("law: of many waters a judgement says what is so in each of them") {
  std::size_t most_waters = 0, findings = 0;
  for (unsigned seed = 0; seed < 60; ++seed) {
    INFO("seed " << seed);
    auto const design =
        laws::with_many_levers(laws::random_junction(seed, seed % 4 == 3 ? 2 : 1), seed);
    auto const judgement = judge(design);
    drawn::Surveyed const surveyed(design);
    most_waters = std::max(most_waters, surveyed.histories.waters.size());
    REQUIRE(judgement.trips == surveyed.trips());
    auto const routes = surveyed.by_situation();
    for (std::size_t s = 0; s < judgement.combinations.situations.size(); ++s) {
      for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
        for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile)
          REQUIRE(judgement.routes.at(s, inlet, profile) == routes.at(s, inlet, profile));
      }
    }
    auto const seen = seen_one_by_one(surveyed);
    findings += seen.size();
    std::set<model::FindingKind> kinds;
    for (auto const& finding : seen) {
      kinds.insert(finding.kind);
      REQUIRE(is_among(finding, judgement.findings));
    }
    for (auto const& finding : judgement.findings)
      REQUIRE((kinds.count(finding.kind) == 0 || is_among(finding, seen)));
  }
  CHECK(most_waters > 64);
  CHECK(findings > 300);
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
