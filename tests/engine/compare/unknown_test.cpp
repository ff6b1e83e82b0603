#include "engine/compare/comparison.hpp"
#include "engine/works/knowledge.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using compare::Change;
using model::FindingKind;

namespace {

// Two steps of a canal, each with a source; a gate of lever 0 in the first, of lever 1 in the
// other.
model::Design steps() {
  return drawn::draw({{"XXXXXXXXXXXXXXXX"},
                      {"XXXXXXXw....c..A"},
                      {"i......w....c..."},
                      {"w...a..........."},
                      {"....a..........."}});
}

// Two levers are then too many to be run as one, so that it is judged by regions.
works::PlantBudget of_one_lever() {
  works::PlantBudget budget;
  budget.part.most_variables = 1;
  return budget;
}

template <class Id>
compare::Counterparts<Id> themselves(std::size_t count) {
  compare::Counterparts<Id> same;
  for (Id id = 0; id < count; ++id) same.push_back(id);
  return same;
}

// Two judgements of one design, compared.
struct Compared {
  Compared(works::WorksJudgement const& was, works::WorksJudgement const& is,
           model::Design const& judged = steps())
      : design(judged),
        ground({design, was.conditions->variables()}, {design, is.conditions->variables()},
               matching.signals, std::size_t{1} << 16),
        before(behaviour_of(design, was, ground.before(), ground)),
        after(behaviour_of(design, is, ground.after(), ground)),
        comparison(compare::compare(before, after, matching, ground)) {}

  model::Design design;
  compare::Matching matching{themselves<model::SignalId>(design.circuit.signals.size()),
                             themselves<model::InletId>(design.inlets.size()),
                             themselves<model::OutletId>(design.outlets.size()),
                             themselves<model::ProfileId>(design.profiles.size()),
                             {}};
  compare::Ground ground;
  compare::Behaviour before, after;
  compare::Comparison comparison;
};

}  // namespace

TEST_CASE("compare: times of what is not followed while it switches are neither better nor worse") {
  auto const design = steps();
  auto const whole = works::judge_works(design),
             by_regions = works::judge_works(design, of_one_lever());
  REQUIRE_FALSE(works::are_findings_complete(by_regions));
  Compared const forth(whole, by_regions), back(by_regions, whole);
  CHECK_FALSE(forth.comparison.times.empty());
  for (auto const& change : forth.comparison.times) {
    CHECK(change.change == Change::other);
    CHECK(forth.before.durations[change.before.value()].is_known);
    CHECK_FALSE(forth.after.durations[change.after.value()].is_known);
  }
  for (auto const& change : back.comparison.times) CHECK(change.change == Change::other);
  CHECK(compare::gravest(back.comparison) == Change::other);
  CHECK_FALSE(forth.comparison.is_proved);
  Compared const itself(by_regions, by_regions);
  CHECK(compare::gravest(itself.comparison) == Change::same);
  CHECK_FALSE(itself.comparison.is_proved);
}

TEST_CASE("compare: all is looked for over regions but bodies inside while cells change") {
  auto const design = steps();
  Compared const compared(works::judge_works(design, of_one_lever()), works::judge_works(design));
  CHECK(compared.before.was_looked_for(FindingKind::pinned));
  CHECK(compared.before.was_looked_for(FindingKind::remembering_water));
  CHECK_FALSE(compared.before.was_looked_for(FindingKind::stranding_switch));
  CHECK(compared.after.was_looked_for(FindingKind::stranding_switch));
  auto budget = of_one_lever();
  budget.region.most_variables = 0;
  CHECK_FALSE(works::was_looked_for(FindingKind::pinned, works::judge_works(design, budget)));
}

TEST_CASE("compare: a finding is gone, or has come, only where it was looked for") {
  auto const design = drawn::draw({{"wi.aA"}, {"...a."}});
  auto const judged = works::judge_works(design);
  auto found = works::judge_works(design), doubted = works::judge_works(design);
  found.findings.push_back({findings::finding_of(FindingKind::oscillation)});
  doubted.kinds_in_doubt = {FindingKind::oscillation};
  auto const only_change = [](Compared const& compared) {
    REQUIRE(compared.comparison.findings.size() == 1);
    return compared.comparison.findings.front();
  };
  CHECK(only_change({found, judged, design}).change == Change::better);
  CHECK(only_change({judged, found, design}).change == Change::worse);
  for (auto const& unsure :
       {only_change({found, doubted, design}), only_change({doubted, found, design})}) {
    CHECK(unsure.change == Change::other);
    CHECK_FALSE(unsure.is_known);
  }
  CHECK(Compared(judged, judged, design).comparison.is_proved);
  CHECK_FALSE(Compared(doubted, judged, design).comparison.is_proved);
}

TEST_CASE("compare: of a body that comes into what is not solved nothing is told as worse") {
  auto const design = steps();
  auto budget = of_one_lever();
  budget.region.most_variables = 0;
  auto const unsolved = works::judge_works(design, budget);
  Compared const compared(works::judge_works(design), unsolved);
  REQUIRE_FALSE(compared.comparison.routes.empty());
  for (auto const& change : compared.comparison.routes) {
    CHECK(change.change == Change::other);
    CHECK_FALSE(change.is_known_after);
  }
  CHECK(Compared(unsolved, unsolved).comparison.routes.empty());
}
