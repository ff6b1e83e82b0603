#include <array>
#include <random>

#include "engine/water/lanes.hpp"
#include "engine/water/settle.hpp"
#include "engine/water/settling.hpp"
#include "tests/support/catch.hpp"

using namespace leat;
using model::FillId;
using model::Rule;

// Water is worked on in patches of some cells in some rows (see Flow). The random junctions fit one
// patch across; these drawings have rows of several, ending just before, at and after the end of
// one, and every number of rows over. With figures of their own, so that water runs far.
namespace {

#ifdef LEAT_SANITIZED
constexpr unsigned designs = 100;
#else
constexpr unsigned designs = 1000;
#endif

class Storeys {
 public:
  explicit Storeys(unsigned seed) : dice_(seed) {}

  model::Design built() {
    constexpr std::array widths{1, 2, 61, 62, 63, 64, 65, 126, 127, 128, 129, 130, 190};
    auto const width = widths[static_cast<std::size_t>(number(0, 12))];
    auto const depth = number(1, 10), height = number(2, 5);
    design_.grid = model::Grid(width, depth, height);
    for (auto id : {model::material::rock, model::material::open, model::material::water}) {
      design_.fills.push_back({id, id, {}});
    }
    for (int i = 0; i < 2; ++i) {  // a gate and a spring
      design_.fills.push_back({i == 0 ? model::material::rock : model::material::water,
                               model::material::open, model::ExpressionId{0}});
    }
    design_.outside_is_open = number(1, 3) == 1;
    design_.fill_of.assign(design_.grid.size(), design_.outside_is_open ? 1u : 0u);
    auto const holes = number(4, 60), pillars = number(4, 60), springs = number(10, 150);
    for (int z = 0; z < height; ++z) {
      bool const is_floor = number(1, 2) == 1;
      for (int y = 0; y < depth; ++y) {
        for (int x = 0; x < width; ++x) {
          bool const is_rock = is_floor ? number(1, holes) > 1 : number(1, pillars) == 1;
          bool const is_spring = number(1, springs) == 1;
          auto const fill = is_spring ? number(2, 4) : is_rock ? 0 : 1;
          design_.fill_of[design_.grid.cell({x, y, z})] = static_cast<FillId>(fill);
        }
      }
    }
    set_figures();
    return std::move(design_);
  }

 private:
  int number(int least, int most) {
    return least + static_cast<int>(dice_() % static_cast<unsigned>(most - least + 1));
  }
  void set_figures() {
    if (number(1, 2) == 1) return;
    constexpr std::array strengths{2, 3, 7, 8, 9, 16, 17, 40};
    design_.practice.set(Rule::source_strength, strengths[static_cast<std::size_t>(number(0, 7))]);
    design_.practice.set(Rule::source_makers, number(1, 5));
    design_.practice.set(Rule::eager_makers, number(1, 5));
    design_.practice.set(Rule::hole_search, number(0, 8));
  }

  std::minstd_rand dice_;
  model::Design design_;
};

model::Arrangement arranged(model::Design const& design, bool gate, bool spring) {
  return {design, {false, false, false, gate, spring}};
}

bool are_same(water::Settled const& one, water::Settled const& other) {
  return one.field == other.field && one.steps == other.steps && one.is_settled == other.is_settled;
}

}  // namespace

TEST_CASE("law: the quick field is the reference field in drawings of many patches") {
  unsigned wet_across = 0;
  for (unsigned seed = 0; seed < designs; ++seed) {
    auto const design = Storeys(seed).built();
    auto const before = arranged(design, true, true), after = arranged(design, false, false);
    auto const fresh = water::settle_fresh(before);
    INFO("seed " << seed);
    REQUIRE(are_same(fresh, water::settle_reference(before)));
    REQUIRE(are_same(water::settle_switched(before, fresh.field, after),
                     water::settle_switched_reference(before, fresh.field, after)));
    for (int y = 0; y < design.grid.depth() && design.grid.width() > 64; ++y) {
      auto const c = design.grid.cell({63, y, 1});
      wet_across += water::is_wet(fresh.field[c]) && water::is_wet(fresh.field[c + 1]) ? 1 : 0;
    }
  }
  CHECK(wet_across > designs / 5);
}

TEST_CASE("law: a field that still moved settles as the reference does in many patches") {
  for (unsigned seed = 0; seed < designs / 4; ++seed) {
    auto const design = Storeys(seed).built();
    auto const before = arranged(design, true, true), after = arranged(design, false, true);
    water::Settling moving(before);
    moving.run(static_cast<int>(seed % 5));
    auto const field = moving.take_field();
    INFO("seed " << seed);
    REQUIRE(are_same(water::settle_switched(before, field, after, false),
                     water::settle_switched_reference(before, field, after)));
  }
}

TEST_CASE("law: lanes are the reference in drawings of many patches") {
  for (unsigned seed = 0; seed < designs / 4; ++seed) {
    auto const design = Storeys(seed).built();
    std::vector<model::Arrangement> all;
    for (int i = 0; i < 4; ++i) all.push_back(arranged(design, i % 2 == 1, i / 2 == 1));
    auto const lanes = water::settle_fresh_lanes(all);
    INFO("seed " << seed);
    for (std::size_t i = 0; i < all.size(); ++i) {
      REQUIRE(are_same(lanes[i], water::settle_reference(all[i])));
    }
  }
}
