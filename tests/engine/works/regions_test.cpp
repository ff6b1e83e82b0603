#include "engine/works/regions.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/works/excerpt.hpp"
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

works::SolvedRegion const& region_of(works::RegionWalk const& walk, model::SignalId signal) {
  auto const own = works::Signals{signal};
  auto const at = std::find_if(walk.regions.begin(), walk.regions.end(),
                               [&](auto const& solved) { return solved.region.signals == own; });
  require(at != walk.regions.end(), "region_of: there is one");
  return *at;
}

}  // namespace

// What neither gate changes is a region of no signal.
TEST_CASE("regions: a source between two gates keeps them apart") {
  auto const design = draw(
      {{"XXXXXXXXXXXXXXXX"}, {"XXXXXXXw....c..A"}, {"wi.a............"}, {"...a............"}});
  auto const regions = works::regions_of(design, works::Supports(design));
  CHECK(supports_of(regions) == std::vector<works::Signals>{{0}, {}, {1}});
}

TEST_CASE("regions: two gates in one channel are one region") {
  auto const design = draw({{"XXXXXXXXX"}, {"wi.a.c..A"}, {"...a.c..."}});
  auto const regions = works::regions_of(design, works::Supports(design));
  CHECK(supports_of(regions) == std::vector<works::Signals>{{}, {0, 1}});
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

TEST_CASE("regions: those that are drawn alike are judged once, mirrored ones too") {
  auto const design = draw({{"XXXXXXXXXXXXXXXXX"}, {"A....a.iwj.c....B"}, {".....a.....c....."}});
  auto const walk = works::walk_regions(design, works::PlantBudget::of_regions());
  REQUIRE(walk);
  auto const &west = region_of(*walk, 0), &east = region_of(*walk, 1);
  CHECK(west.drawing == east.drawing);
  CHECK(west.own_variables == std::vector<model::SignalId>{0});
  CHECK(east.own_variables == std::vector<model::SignalId>{1});
  works::AsBuilt as_built(design);
  works::Supports const supports(design);
  CHECK(works::kinds_of(works::regions_of(design, supports), design, supports, as_built) == 2);
}

// East of its gate a third channel is one cell shorter, where its water still runs.
TEST_CASE("regions: those that are drawn otherwise are judged by themselves") {
  auto const design = draw({{"XXXXXXXXXXXXXXXXX"}, {"A....a.iwj.c..XBX"}, {".....a.....c..X.X"}});
  auto const walk = works::walk_regions(design, works::PlantBudget::of_regions());
  REQUIRE(walk);
  CHECK(region_of(*walk, 0).drawing != region_of(*walk, 1).drawing);
}

TEST_CASE("frame: cells and sides are told there and back in all eight postures") {
  model::Grid const own(4, 3, 2), whole(9, 8, 5);
  for (bool is_mirrored : {false, true}) {
    for (int quarters = 0; quarters < 4; ++quarters) {
      works::Copy where;
      where.corner = {2, 3, 1};
      where.posture = {is_mirrored, quarters};
      works::Frame const frame(where, own, whole);
      std::size_t held = 0;
      for (model::Cell c = 0; c < whole.size(); ++c) {
        if (!frame.holds(c)) continue;
        ++held;
        CHECK(frame.in_whole(frame.own(c)) == c);
      }
      CHECK(held == own.volume());
      auto const middle = own.cell({1, 1, 0});
      for (auto side : model::sides) {
        body::Position const at{own.beside(middle, side), side, 2};
        auto const there = frame.in_whole(at);
        CHECK(whole.beside(frame.in_whole(middle), there.carried_to) == there.feet);
        CHECK(frame.own(there) == at);
      }
      CHECK(frame.own(model::Side::none) == model::Side::none);
    }
  }
}

TEST_CASE("excerpts: one that lacks what its water follows from does not change by itself") {
  auto const design = draw({{"XXXXXXXXXXXXXXXXX"}, {"A....a.iwj.c....B"}, {".....a.....c....."}});
  works::Supports const supports(design);
  works::AsBuilt as_built(design);
  auto const regions = works::regions_of(design, supports);
  auto const region = std::find_if(regions.begin(), regions.end(),
                                   [](auto const& r) { return r.signals == works::Signals{0}; });
  REQUIRE(region != regions.end());
  auto const whole = works::Excerpts(design, supports).of(*region);
  auto const stands = [&](works::Excerpt const& cut, works::Excerpt const& asked) {
    auto const& held = as_built.held(supports, *region).design;
    auto known = works::Cuttings(design).cut(held, cut);
    auto const where = known.form.copy;
    auto const drawn = works::part_of(std::move(known.form), held).drawn();
    return works::changes_by_itself(asked, supports.bounds(), water::Bounds(drawn),
                                    {where, drawn.grid, design.grid});
  };
  CHECK(stands(whole, whole));
  auto without_source = whole, told_too_little = whole;
  auto const source = design.grid.cell({8, 0, 1}), behind_the_gate = design.grid.cell({4, 0, 1});
  std::erase(without_source.material, source);
  std::erase(told_too_little.water, behind_the_gate);
  CHECK_FALSE(stands(without_source, whole));
  CHECK_FALSE(stands(whole, told_too_little));
}
