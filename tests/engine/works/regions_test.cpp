#include "engine/works/regions.hpp"

#include "engine/works/judge_works.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using namespace leat::drawn;

namespace {

// Two steps of a canal, each with a source; a gate of lever 0 in the first, of lever 1 in the
// other.
model::Design steps() {
  return draw({{"XXXXXXXXXXXXXXXX"},
               {"XXXXXXXw....c..A"},
               {"i......w....c..."},
               {"w...a..........."},
               {"....a..........."}});
}

std::vector<works::Signals> supports_of(std::vector<works::Region> const& regions) {
  std::vector<works::Signals> found;
  for (auto const& region : regions) found.push_back(region.signals);
  return found;
}

}  // namespace

TEST_CASE("regions: a source between two gates keeps them apart") {
  auto const design = draw(
      {{"XXXXXXXXXXXXXXXX"}, {"XXXXXXXw....c..A"}, {"wi.a............"}, {"...a............"}});
  auto const regions = works::regions_of(design, works::Supports(design));
  CHECK(supports_of(regions) == std::vector<works::Signals>{{0}, {1}});
}

TEST_CASE("regions: two gates in one channel are one region") {
  auto const design = draw({{"XXXXXXXXX"}, {"wi.a.c..A"}, {"...a.c..."}});
  auto const regions = works::regions_of(design, works::Supports(design));
  REQUIRE(regions.size() == 1);
  CHECK(regions[0].signals == works::Signals{0, 1});
}

TEST_CASE("regions: water further than its strength reaches depends on nothing before it") {
  auto const design = draw({{"XXXXXXXXXXXXXXXX"}, {"wia...........ww"}});
  works::Supports const supports(design);
  CHECK(supports.of_water(design.grid.cell({5, 0, 1})) == works::Signals{0});
  CHECK(supports.of_water(design.grid.cell({8, 0, 1})).empty());
}

TEST_CASE("regions: a held design has the region's signals alone, and the rest as built") {
  auto const design = draw(
      {{"XXXXXXXXXXXXXXXX"}, {"XXXXXXXw....c..A"}, {"wi.a............"}, {"...a............"}});
  works::Supports const supports(design);
  auto const regions = works::regions_of(design, supports);
  auto const held = works::AsBuilt(design).held(supports, regions.front());
  CHECK(held.signals == std::vector<model::SignalId>{0});
  CHECK(held.design.circuit.signals.size() == 1);
  CHECK(held.design.fills[design.fill_of[design.grid.cell({12, 0, 1})]] ==
        model::Fill{model::material::open, model::material::open, {}});
}

TEST_CASE("regions: a region past its budget is undecided, and what does not pass it is told") {
  auto const design = steps();
  works::PlantBudget budget;
  budget.part.most_variables = 1;
  budget.region.most_variables = 0;
  auto const judged = works::judge_works(design, budget);
  CHECK(judged.too_large.empty());
  CHECK_FALSE(judged.too_large_regions.empty());
  CHECK(works::is_incomplete(judged));
  REQUIRE(judged.passages.size() == 1);
  CHECK(judged.passages[0].unknown != logic::Diagram::never);
}
