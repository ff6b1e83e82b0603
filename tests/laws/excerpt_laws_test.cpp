#include <algorithm>
#include <set>

#include "engine/logic/settled_circuit.hpp"
#include "engine/logic/truth.hpp"
#include "engine/works/judge_works.hpp"
#include "engine/works/region_waters.hpp"
#include "tests/laws/random_plant.hpp"
#include "tests/support/catch.hpp"

using namespace leat;

namespace {

#ifdef LEAT_SANITIZED
constexpr unsigned rows_drawn = 15;
#else
constexpr unsigned rows_drawn = 150;
#endif

using States = std::vector<water::State>;

std::set<States> situation(Judgement const& judged, logic::Row row,
                           std::vector<States> const& by_water) {
  auto const& combinations = judged.combinations;
  std::set<States> all;
  for (auto water : combinations.situations[combinations.situation_of_row[row]])
    all.insert(by_water[water]);
  return all;
}

struct Counts {
  std::size_t regions = 0, judged_whole = 0, situations = 0, remembering = 0;
};

// One region, in its excerpt and in the held design: which waters each combination can have, at the
// cells that are looked at.
void compare(model::Design const& design, works::Supports const& supports, works::AsBuilt& as_built,
             works::Region const& region, Counts& counts) {
  auto const budget = works::PlantBudget::of_regions();
  Progress const progress;
  works::RegionWaters waters(design, supports, as_built, budget, progress);
  auto const solved = waters.judge(region);
  auto const& held = as_built.held(supports, region);
  auto const whole = judge(held.design, budget);
  REQUIRE(solved.is_solved ==
          (whole.is_decided && !whole.has_restless && explore::do_rest(whole.histories)));
  if (!solved.is_solved) return;
  auto const looked_at = works::Excerpts(design, supports).of(region).water;
  std::vector<States> in_whole, in_excerpt;
  for (auto const& water : whole.histories.waters) {
    auto& states = in_whole.emplace_back();
    for (auto c : looked_at) states.push_back(water.field[c]);
  }
  waters.for_each_water(0, 0, [&](std::uint32_t, works::RegionView const& view) {
    auto const& [here, frame] = view;
    auto& states = in_excerpt.emplace_back();
    for (auto c : looked_at)
      states.push_back(frame.holds(c) ? here.moment().field[frame.own(c)] : water::dry);
  });
  ++counts.regions;
  counts.judged_whole += solved.drawing == 0 ? 0u : 1u;  // another one, after its excerpt
  logic::Truth const truth(logic::settled_circuit(held.design.circuit), whole.variables);
  for (logic::Row row = 0; row < whole.combinations.reachable.row_count(); ++row) {
    if (!whole.combinations.reachable.contains(row)) continue;
    logic::Row own_row = 0;
    for (auto variable : solved.own_variables) {
      auto const in_held = std::find(held.signals.begin(), held.signals.end(), variable);
      auto const id = static_cast<model::SignalId>(in_held - held.signals.begin());
      own_row = own_row << 1 | (truth.of_signal(id).contains(row) ? 1u : 0u);
    }
    auto const wanted = situation(whole, row, in_whole);
    CHECK(situation(solved.judged, own_row, in_excerpt) == wanted);
    ++counts.situations;
    counts.remembering += wanted.size() > 1 ? 1u : 0u;
  }
}

Counts compared(bool has_memory) {
  Counts counts;
  for (unsigned seed = 0; seed < rows_drawn; ++seed) {
    INFO("seed " << seed);
    auto const design = laws::random_row(seed, has_memory);
    works::Supports const supports(design);
    works::AsBuilt as_built(design);
    if (!as_built.is_known()) continue;
    for (auto const& region : works::regions_of(design, supports))
      compare(design, supports, as_built, region, counts);
  }
  return counts;
}

}  // namespace

// Source: docs/model.md, regions; engine/works/region_waters.hpp says why.
TEST_CASE("law: a region's excerpt has the waters that the whole drawing has there") {
  auto const counts = compared(false);
  INFO(counts.judged_whole << " of " << counts.regions << " regions judged as a whole, "
                           << counts.situations << " situations, " << counts.remembering
                           << " of several waters");
  CHECK(counts.situations > 10 * rows_drawn);
  CHECK(counts.remembering > rows_drawn / 4);
  CHECK(20 * counts.judged_whole < counts.regions);
}

TEST_CASE("law: so it has where latches switch cells") {
  auto const counts = compared(true);
  INFO(counts.judged_whole << " of " << counts.regions << " regions judged as a whole");
  CHECK(counts.situations > 10 * rows_drawn);
  CHECK(20 * counts.judged_whole < counts.regions);
}
