#include <algorithm>
#include <map>
#include <queue>
#include <set>

#include "engine/body/travel.hpp"
#include "engine/water/settle.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

constexpr unsigned designs = 300;

using Waters = std::map<logic::Row, std::set<water::Field>>;

// Every water that each combination can come with, found plainly: one event after the other, each
// water stepped by the reference.
Waters waters_by_switching(model::Design const& design,
                           std::vector<model::SignalId> const& variables) {
  logic::Machine const machine(design.circuit);
  auto const is_drawn = explore::fills_drawn(design);
  auto const arranged = [&](logic::Code code) {
    return model::Arrangement(design, explore::setting_in(design, is_drawn, machine.values(code)));
  };
  std::set<std::pair<logic::Code, water::Field>> seen;
  std::queue<std::pair<logic::Code, water::Field>> open;
  auto const visit = [&](logic::Code code, water::Field field) {
    if (seen.emplace(code, field).second) open.emplace(code, std::move(field));
  };
  auto const as_built = machine.as_built().code;
  visit(as_built, water::settle_reference(arranged(as_built)).field);
  while (!open.empty()) {
    auto const [code, field] = open.front();
    open.pop();
    for (std::size_t event = 0; event < machine.input_count(); ++event) {
      auto const next = machine.after(code, event);
      if (!next.is_quiet) continue;
      auto const before = arranged(code), after = arranged(next.code);
      visit(next.code, water::settle_switched_reference(before, field, after).field);
    }
  }
  Waters waters;
  for (auto const& [code, field] : seen) {
    auto const values = machine.values(code);
    logic::Row row = 0;
    for (auto variable : variables) row = row << 1 | (values[variable] ? 1u : 0u);
    waters[row].insert(field);
  }
  return waters;
}

// A random junction whose second control is memory of some kind that hangs on both of its levers.
model::Design with_memory(unsigned seed) {
  auto design = laws::random_junction(seed);
  auto& circuit = design.circuit;
  circuit.signals.push_back({model::SignalKind::lever, false, 0, 0, 0});
  auto const second = circuit.add({model::Operator::signal, 2, 0});
  auto const starts_on = seed % 2 == 0;
  if (seed % 3 == 0) {
    circuit.signals[1] = {model::SignalKind::toggle, starts_on, second, 0, 0};
  } else if (seed % 3 == 1) {
    circuit.signals[1] = {model::SignalKind::latch, starts_on, 0, second, 0};
  } else {
    auto const both = circuit.add({model::Operator::conjunction, 0, second});
    circuit.signals[1] = {model::SignalKind::delay, starts_on, both, 0, 15};
  }
  return design;
}

// How often the laws had something to say: rows never reached, and rows with several waters.
struct Seen {
  int unreached = 0, remembering = 0;
};

void check_waters(model::Design const& design, Seen& seen) {
  auto const judgement = judge(design);
  auto const& combinations = judgement.combinations;
  REQUIRE(judgement.histories.is_followed);
  auto const expected = waters_by_switching(design, combinations.variables);
  for (logic::Row row = 0; row < combinations.situation_of_row.size(); ++row) {
    auto const situation = combinations.situation_of_row[row];
    auto const found = expected.find(row);
    REQUIRE((situation != explore::Combinations::never) == (found != expected.end()));
    seen.unreached += found == expected.end() ? 1 : 0;
    if (found == expected.end()) continue;
    seen.remembering += found->second.size() > 1 ? 1 : 0;
    std::set<water::Field> waters;
    for (auto water : combinations.situations[situation])
      waters.insert(judgement.histories.waters[water].field);
    REQUIRE(waters == found->second);
    REQUIRE(waters.size() == combinations.situations[situation].size());
  }
}

bool holds_all(std::vector<std::uint32_t> const& all, std::vector<std::uint32_t> const& some) {
  return std::includes(all.begin(), all.end(), some.begin(), some.end());
}

// Visits every route in every water, by the body alone.
template <class Visit>
void for_each_travel(model::Design const& design, explore::Histories const& histories,
                     Visit visit) {
  auto const outlets = body::outlet_cells(design);
  for (std::uint32_t water = 0; water < histories.waters.size(); ++water) {
    model::Arrangement const arrangement(design,
                                         histories.settings[histories.waters[water].setting]);
    for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
      body::Surroundings const here(arrangement, histories.waters[water].field,
                                    design.profiles[profile]);
      for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
        visit(water, inlet, profile, here,
              body::route_graph(here, body::entries(here, design.inlets[inlet].cells), outlets));
      }
    }
  }
}

}  // namespace

TEST_CASE("law: a situation holds the waters that switching brings, all of them and no other") {
  Seen seen;
  for (unsigned seed = 0; seed < designs; ++seed) {
    INFO("seed " << seed);
    check_waters(laws::random_junction(seed), seen);
  }
  CHECK(seen.unreached == 0);
  CHECK(seen.remembering > 5);
}

TEST_CASE("law: with memory in the rows the situations still hold what switching brings") {
  Seen seen;
  for (unsigned seed = 0; seed < designs; ++seed) {
    INFO("seed " << seed);
    check_waters(with_memory(seed), seen);
  }
  CHECK(seen.unreached > 100);
  CHECK(seen.remembering > 5);
}

TEST_CASE("law: the route of a situation holds the route of each of its waters, and no more") {
  int with_several = 0, differing = 0;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design);
    auto const& combinations = judgement.combinations;
    std::map<std::tuple<std::uint32_t, model::InletId, model::ProfileId>, tables::Route> own;
    for_each_travel(
        design, judgement.histories,
        [&](auto water, auto inlet, auto profile, auto const&, auto const& graph) {
          own[{water, inlet, profile}] = tables::route_of(graph, body::outcome_of(graph));
        });
    for (std::uint32_t s = 0; s < combinations.situations.size(); ++s) {
      auto const& waters = combinations.situations[s];
      with_several += waters.size() > 1 ? 1 : 0;
      for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
        for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
          auto const& route = judgement.routes.at(s, inlet, profile);
          std::set<model::OutletId> outlets;
          std::set<model::Cell> trapped;
          bool spills = false, is_unsure = false, is_certain = true;
          INFO("seed " << seed << ", situation " << s);
          for (auto water : waters) {
            auto const& one = own[{water, inlet, profile}];
            REQUIRE(holds_all(route.outlets, one.outlets));
            REQUIRE(holds_all(route.trapped, one.trapped));
            outlets.insert(one.outlets.begin(), one.outlets.end());
            trapped.insert(one.trapped.begin(), one.trapped.end());
            spills = spills || one.spills;
            is_unsure = is_unsure || one.is_unsure;
            is_certain = is_certain && one.verdict == body::Verdict::certain;
            differing += one != own[{waters.front(), inlet, profile}] ? 1 : 0;
          }
          REQUIRE(route.outlets == std::vector(outlets.begin(), outlets.end()));
          REQUIRE(route.trapped == std::vector(trapped.begin(), trapped.end()));
          REQUIRE(route.spills == spills);
          REQUIRE(route.is_unsure == is_unsure);
          REQUIRE((route.verdict == body::Verdict::certain) == (is_certain && outlets.size() == 1));
          REQUIRE((route.verdict == body::Verdict::split) == (outlets.size() > 1));
          REQUIRE((route.verdict == body::Verdict::lost) == outlets.empty());
        }
      }
    }
  }
  CAPTURE(with_several, differing);
  CHECK(with_several > 5);
  CHECK(differing > 5);
}

TEST_CASE("law: a trip is as long as its longest way, and without bound where a body is held") {
  int bounded = 0, unbounded = 0;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed, 1 + static_cast<int>(seed % 2));
    auto const judgement = judge(design);
    for_each_travel(design, judgement.histories,
                    [&](auto water, auto inlet, auto profile, auto const& here, auto const& graph) {
                      auto const& trip =
                          judgement.trips[water][inlet * design.profiles.size() + profile];
                      bool const has_trap = body::outcome_of(graph).has_trap;
                      INFO("seed " << seed);
                      REQUIRE(trip == (has_trap ? std::nullopt : body::longest_trip(here, graph)));
                      ++(trip ? bounded : unbounded);
                    });
  }
  CHECK(bounded > 20);
  CHECK(unbounded > 20);
}

TEST_CASE("law: without history each combination has one water, the one from dry") {
  Budget as_built;
  as_built.follows_history = false;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design, as_built);
    INFO("seed " << seed);
    REQUIRE_FALSE(judgement.histories.is_followed);
    REQUIRE_FALSE(judgement.switchings.is_complete);
    REQUIRE(judgement.guards.empty());
    for (auto const& waters : judgement.combinations.situations) REQUIRE(waters.size() == 1);
    for (logic::Row row = 0; row < 4; ++row) {
      auto const water =
          judgement.combinations.situations[judgement.combinations.situation_of_row[row]][0];
      REQUIRE(explore::field_of(design, judgement.histories, water) ==
              solve(design, {(row & 2u) != 0, (row & 1u) != 0}).field);
    }
  }
}
