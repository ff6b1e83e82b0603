#include <algorithm>
#include <set>
#include <tuple>

#include "engine/water/current.hpp"
#include "engine/water/settle.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/laws/symmetry.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using laws::Symmetry;

namespace {

using Routes = std::vector<tables::Route>;

Routes routes_of(Judgement const& judgement) {
  Routes routes;
  for (auto situation : judgement.combinations.situation_of_row) {
    for (model::InletId inlet = 0; inlet < judgement.routes.inlets(); ++inlet) {
      for (model::ProfileId profile = 0; profile < judgement.routes.profiles(); ++profile) {
        routes.push_back(judgement.routes.at(situation, inlet, profile));
      }
    }
  }
  return routes;
}

Routes turned(Routes routes, Symmetry const& symmetry, int footprint) {
  for (auto& route : routes) route.trapped = symmetry.of_feet(route.trapped, footprint);
  return routes;
}

using Told = std::multiset<
    std::tuple<model::FindingKind, model::Severity, std::vector<model::Cell>, int, std::size_t,
               std::optional<model::SignalId>, std::optional<int>, std::size_t>>;

Told told(std::vector<findings::Finding> const& findings, Symmetry const& symmetry) {
  Told result;
  for (auto const& finding : findings) {
    result.emplace(finding.kind, finding.severity, symmetry.of_feet(finding.cells, 1),
                   finding.measured, finding.rows.count(), finding.event, finding.ticks,
                   finding.waters.size());
  }
  return result;
}

using Threats = std::multiset<std::tuple<explore::Danger::Kind, model::InletId, model::ProfileId,
                                         std::optional<model::OutletId>, std::vector<model::Cell>>>;
using Guarding = std::vector<std::tuple<model::SignalId, bool, logic::RowSet, std::optional<int>,
                                        std::optional<int>, Threats>>;

Guarding guarding(std::vector<explore::Guard> const& guards, Symmetry const& symmetry,
                  int footprint) {
  Guarding result;
  for (auto const& guard : guards) {
    Threats threats;
    for (auto const& [danger, rows, example] : guard.threats) {
      threats.emplace(danger.kind, danger.inlet, danger.profile, danger.outlet,
                      symmetry.of_feet(danger.cells, footprint));
    }
    result.emplace_back(guard.event, guard.goes_on, guard.rows, guard.wait, guard.clearing,
                        std::move(threats));
  }
  return result;
}

}  // namespace

TEST_CASE("the eight symmetries are eight, and each is one to one") {
  model::Grid const grid(3, 4, 2);
  std::set<std::vector<model::Cell>> images;
  for (int number = 0; number < Symmetry::count; ++number) {
    Symmetry const symmetry(grid, number);
    std::vector<model::Cell> image;
    for (model::Cell c = 0; c < grid.size(); ++c) {
      if (grid.is_inside(c)) image.push_back(symmetry.of(c));
    }
    CHECK(std::set(image.begin(), image.end()).size() == grid.volume());
    images.insert(image);
  }
  CHECK(images.size() == 8);
}

TEST_CASE("law: turn or mirror a design, and its water and currents turn with it") {
  for (unsigned seed = 0; seed < 300; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const arrangement = laws::arrangements_of(design).front();
    auto const field = water::settle_fresh(arrangement).field;
    for (int number = 1; number < Symmetry::count; ++number) {
      Symmetry const symmetry(design.grid, number);
      auto const image = symmetry.applied(design);
      auto const arranged = laws::arrangements_of(image).front();
      auto const settled = water::settle_fresh(arranged).field;
      INFO("seed " << seed << ", symmetry " << number);
      for (model::Cell c = 0; c < field.size(); ++c) {
        if (!design.grid.is_inside(c)) continue;
        REQUIRE(settled[symmetry.of(c)] == field[c]);
        REQUIRE(water::current_at({arranged, settled}, symmetry.of(c)) ==
                symmetry.of_arrow(water::current_at({arrangement, field}, c)));
      }
    }
  }
}

TEST_CASE("law: turn or mirror a design, and its routes and findings turn with it") {
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design);
    for (int number = 1; number < Symmetry::count; ++number) {
      Symmetry const symmetry(design.grid, number);
      auto const image = judge(symmetry.applied(design));
      INFO("seed " << seed << ", symmetry " << number);
      REQUIRE(routes_of(image) == turned(routes_of(judgement), symmetry, 1));
      REQUIRE(told(image.findings, Symmetry(symmetry.grid(), 0)) ==
              told(judgement.findings, symmetry));
      REQUIRE(image.combinations.situations == judgement.combinations.situations);
      REQUIRE(image.trips == judgement.trips);
    }
  }
}

TEST_CASE("law: turn or mirror a design, and what switching does to bodies turns with it") {
  std::size_t dangers = 0;
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const judgement = judge(design);
    for (auto const& guard : judgement.guards) dangers += guard.threats.size();
    for (int number = 1; number < Symmetry::count; ++number) {
      Symmetry const symmetry(design.grid, number);
      auto const image = judge(symmetry.applied(design));
      INFO("seed " << seed << ", symmetry " << number);
      REQUIRE(guarding(image.guards, Symmetry(symmetry.grid(), 0), 1) ==
              guarding(judgement.guards, symmetry, 1));
    }
  }
  CHECK(dangers > 100);
}

// Where the outside is open a wide body has left when its feet cell has, which is its north-west
// corner: there the law does not hold, and is not asked for.
TEST_CASE("law: the routes of bodies two cells wide turn with the design") {
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const design = laws::random_junction(seed, 2);
    if (design.outside_is_open) continue;
    auto const judgement = judge(design);
    for (int number = 1; number < Symmetry::count; ++number) {
      Symmetry const symmetry(design.grid, number);
      auto const image = judge(symmetry.applied(design, 2));
      INFO("seed " << seed << ", symmetry " << number);
      REQUIRE(routes_of(image) == turned(routes_of(judgement), symmetry, 2));
    }
  }
}
