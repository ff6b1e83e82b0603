#include <algorithm>
#include <map>

#include "engine/findings/sighting.hpp"
#include "engine/water/settle.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

constexpr unsigned designs = 300;

bool are_equal(findings::Finding const& a, findings::Finding const& b) {
  return a.kind == b.kind && a.severity == b.severity && a.cells == b.cells &&
         a.inlets == b.inlets && a.outlets == b.outlets && a.profiles == b.profiles &&
         a.signals == b.signals && a.measured == b.measured && a.limit == b.limit &&
         a.rows == b.rows && a.waters == b.waters && a.event == b.event && a.ticks == b.ticks &&
         a.examples.size() == b.examples.size() && a.condition == b.condition &&
         a.accepted_by == b.accepted_by;
}

bool are_equal(std::vector<findings::Finding> const& a, std::vector<findings::Finding> const& b) {
  return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                    [](auto const& x, auto const& y) { return are_equal(x, y); });
}

}  // namespace

TEST_CASE("law: without history the table holds in each row what that row alone, solved, gives") {
  Budget as_built;
  as_built.follows_history = false;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed, 1 + static_cast<int>(seed % 2));
    auto const judgement = judge(design, as_built);
    REQUIRE(judgement.combinations.reachable.is_full());
    REQUIRE(judgement.combinations.reachable.inputs() == 2);
    auto const outlets = body::outlet_cells(design);
    for (logic::Row row = 0; row < 4; ++row) {
      auto const solved = solve(design, {(row & 2u) != 0, (row & 1u) != 0});
      auto const field = water::settle_reference(solved.arrangement).field;
      auto const situation = judgement.combinations.situation_of_row[row];
      for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
        body::Surroundings const here(solved.arrangement, field, design.profiles[profile]);
        for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
          auto const graph =
              body::route_graph(here, body::entries(here, design.inlets[inlet].cells), outlets);
          auto const outcome = body::outcome_of(graph);
          auto const& route = judgement.routes.at(situation, inlet, profile);
          INFO("seed " << seed << ", row " << row);
          REQUIRE(route.verdict == outcome.verdict);
          REQUIRE(route.outlets == outcome.outlets);
          REQUIRE(route.spills == outcome.spills);
          REQUIRE(route.trapped.empty() == !outcome.has_trap);
        }
      }
    }
  }
}

TEST_CASE("law: the conditions of the destinations rebuild the rows, each once") {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design);
    auto const inputs = static_cast<int>(judgement.variables.size());
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      logic::RowSet all(inputs);
      std::size_t count = 0;
      for (auto const& destination :
           tables::destinations(judgement.combinations, judgement.routes, inlet, 0)) {
        REQUIRE(logic::rows_of(destination.condition, inputs) == destination.rows);
        all |= destination.rows;
        count += destination.rows.count();
        for (logic::Row row = 0; row < destination.rows.row_count(); ++row) {
          if (!destination.rows.contains(row)) continue;
          auto const& route =
              judgement.routes.at(judgement.combinations.situation_of_row[row], inlet, 0);
          REQUIRE(route.verdict == destination.verdict);
          REQUIRE(route.outlets == destination.outlets);
        }
      }
      CHECK(all.is_full());
      CHECK(count == all.row_count());
    }
  }
}

TEST_CASE("law: judging twice gives the same judgement") {
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const once = judge(design), twice = judge(design);
    INFO("seed " << seed);
    REQUIRE(are_equal(once.findings, twice.findings));
    REQUIRE(once.combinations.situation_of_row == twice.combinations.situation_of_row);
    REQUIRE(once.combinations.situations == twice.combinations.situations);
    REQUIRE(once.trips == twice.trips);
  }
}

TEST_CASE("law: findings do not depend on the order in which things were seen") {
  std::mt19937 dice(3);
  model::Grid const grid(4, 4, 2);
  struct Seen {
    std::uint32_t water;
    model::InletId inlet;
    model::ProfileId profile;
    findings::Sighting sighting;
  };
  auto const pick = [&](unsigned n) { return static_cast<unsigned>(dice() % n); };
  for (int trial = 0; trial < 300; ++trial) {
    std::vector<Seen> all;
    for (int i = 0; i < 12; ++i) {
      auto const cell = grid.cell({static_cast<int>(dice() % 4), static_cast<int>(dice() % 4), 0});
      auto const kind =
          dice() % 2 == 0 ? model::FindingKind::dry_stand : model::FindingKind::hard_landing;
      bool const has_figures = kind == model::FindingKind::hard_landing;
      all.push_back({pick(4),
                     pick(2),
                     pick(2),
                     {kind,
                      {cell},
                      {},
                      has_figures ? static_cast<int>(4 + dice() % 4) : 0,
                      has_figures ? static_cast<int>(2 + dice() % 3) : 0,
                      {}}});
    }
    auto const gathered = [&] {
      findings::Sightings sightings;
      for (auto const& seen : all) {
        sightings.add(seen.water, seen.inlet, seen.profile, {seen.sighting});
      }
      return sightings.gathered(grid);
    };
    auto const first = gathered();
    std::shuffle(all.begin(), all.end(), dice);
    INFO("trial " << trial);
    REQUIRE(are_equal(first, gathered()));
  }
}

TEST_CASE("the random designs have every verdict, every move and most findings") {
  std::map<body::Verdict, int> verdicts;
  std::map<body::MoveRule, int> moves;
  std::map<model::FindingKind, int> kinds;
  int unsure = 0;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design);
    for (auto const& finding : judgement.findings) ++kinds[finding.kind];
    for (std::size_t s = 0; s < judgement.combinations.situations.size(); ++s) {
      for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
        ++verdicts[judgement.routes.at(s, inlet, 0).verdict];
      }
    }
    auto const arrangement = laws::arrangements_of(design).front();
    auto const field = water::settle_fresh(arrangement).field;
    body::Surroundings const here(arrangement, field, design.profiles[0]);
    for (auto const& inlet : design.inlets) {
      auto const graph =
          body::route_graph(here, body::entries(here, inlet.cells), body::outlet_cells(design));
      for (auto const& step : graph.steps) {
        ++moves[step.rule];
        unsure += step.is_sure ? 0 : 1;
      }
    }
  }
  CHECK(moves.size() == 6);
  CHECK(unsure > 20);
  for (auto verdict : {body::Verdict::certain, body::Verdict::split, body::Verdict::doubtful,
                       body::Verdict::lost}) {
    INFO("verdict " << static_cast<int>(verdict));
    CHECK(verdicts[verdict] > 4);
  }
  CHECK(kinds.size() >= 20);  // of those that need no acceptance or named signals
}
