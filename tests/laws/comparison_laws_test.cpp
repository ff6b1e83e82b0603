#include <map>
#include <random>

#include "engine/compare/comparison.hpp"
#include "engine/compare/deviations.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

constexpr unsigned pairs = 500;

template <class Id>
compare::Counterparts<Id> themselves(std::size_t count) {
  compare::Counterparts<Id> same;
  for (Id id = 0; id < count; ++id) same.push_back(id);
  return same;
}

compare::Matching themselves(model::Design const& design) {
  return {themselves<model::SignalId>(design.circuit.signals.size()),
          themselves<model::InletId>(design.inlets.size()),
          themselves<model::OutletId>(design.outlets.size()),
          themselves<model::ProfileId>(design.profiles.size()),
          {}};
}

// The design with some of its cells filled otherwise.
model::Design mutant(model::Design design, unsigned seed) {
  std::mt19937 dice(seed);
  for (int change = 0; change < 3; ++change) {
    auto const cell = static_cast<model::Cell>(dice() % design.grid.size());
    if (design.grid.is_inside(cell))
      design.fill_of[cell] = static_cast<model::FillId>(dice() % design.fills.size());
  }
  return design;
}

struct Compared {
  Judgement before, after;
  std::unique_ptr<compare::Ground> ground;
  compare::Comparison comparison;
};

Compared compared(model::Design const& before, model::Design const& after) {
  Compared result{judge(before), judge(after), nullptr, {}};
  auto const matching = themselves(before);
  result.ground =
      std::make_unique<compare::Ground>(compare::Ground::Revision{before, result.before.variables},
                                        compare::Ground::Revision{after, result.after.variables},
                                        matching.signals, std::size_t{1} << 20);
  auto& ground = *result.ground;
  result.comparison = compare::compare(
      compare::behaviour_of(before, result.before, ground.before(), ground),
      compare::behaviour_of(after, result.after, ground.after(), ground), matching, ground);
  return result;
}

// What comparing looks at of a route.
bool are_alike(tables::Route const& a, tables::Route const& b) {
  return a.outlets == b.outlets && a.trapped.empty() == b.trapped.empty() && a.spills == b.spills &&
         a.is_unsure == b.is_unsure;
}

// The values of the ground's variables in a row of the two levers, which both revisions have.
works::Instance instance_of(Compared const& compared, logic::Row row) {
  works::Instance instance;
  for (auto variable : compared.ground->conditions().variables())
    instance.push_back((row >> (1 - variable) & 1u) != 0);
  return instance;
}

tables::Route const& route_in(Judgement const& judged, logic::Row row, model::InletId inlet,
                              model::ProfileId profile) {
  return judged.routes.at(judged.combinations.situation_of_row[row], inlet, profile);
}

}  // namespace

TEST_CASE("law: a design compared with itself is proved the same") {
  for (unsigned seed = 0; seed < 100; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const result = compared(design, design);
    INFO("seed " << seed);
    REQUIRE(result.comparison.routes.empty());
    REQUIRE(result.comparison.findings.empty());
    REQUIRE(result.comparison.times.empty());
    REQUIRE(result.comparison.is_proved);
  }
}

TEST_CASE("law: the listed route changes are the rows in which the two tables differ, no other") {
  int different = 0;
  for (unsigned seed = 0; seed < pairs; ++seed) {
    auto const before = laws::random_junction(seed), after = mutant(before, seed);
    auto const result = compared(before, after);
    auto& diagram = result.ground->diagram();
    std::map<std::pair<model::InletId, model::ProfileId>, std::vector<compare::Function>> told;
    for (auto const& change : result.comparison.routes) {
      told[{change.inlet, change.profile}].push_back(change.condition);
      REQUIRE(change.example);
      REQUIRE(diagram.is_true(change.condition, change.example->instance));
      REQUIRE(change.example->flips);
    }
    for (model::InletId inlet = 0; inlet < before.inlets.size(); ++inlet) {
      for (model::ProfileId profile = 0; profile < before.profiles.size(); ++profile) {
        for (logic::Row row = 0; row < 4; ++row) {
          bool is_told = false;
          for (auto f : told[{inlet, profile}])
            is_told = is_told || diagram.is_true(f, instance_of(result, row));
          INFO("seed " << seed << ", row " << row);
          bool const differs = !are_alike(route_in(result.before, row, inlet, profile),
                                          route_in(result.after, row, inlet, profile));
          REQUIRE(is_told == differs);
          different += differs ? 1 : 0;
        }
      }
    }
  }
  CHECK(different > 100);
}
