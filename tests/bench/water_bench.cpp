#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include "engine/water/lanes.hpp"
#include "tests/bench/plain_search.hpp"
#include "tests/laws/random_junction.hpp"

// How long the water and a judgement take. Ratios belong to one run on one machine.
//
//     water_bench [SIDE]    SIDE of the second floor, 1024 where it is not said
namespace {

using namespace leat;
using model::FillId;

// The best of some runs, by the processor time of this program: others share the machine.
template <class Work>
double best_seconds(Work work, int runs = 5) {
  double best = 1e9;
  for (int run = 0; run < runs; ++run) {
    auto const start = std::clock();
    work();
    best = std::min(best, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  return best;
}

constexpr FillId rock = 0, open = 1, water = 2;

model::Design open_block(int width, int depth, int height) {
  model::Design design;
  design.grid = model::Grid(width, depth, height);
  for (model::MaterialId id = 0; id < 3; ++id) design.fills.push_back({id, id, {}});
  design.fill_of.assign(design.grid.size(), rock);
  for (int z = 1; z < height; ++z) {
    for (int y = 0; y < depth; ++y) {
      for (int x = 0; x < width; ++x) design.fill_of[design.grid.cell({x, y, z})] = open;
    }
  }
  return design;
}

void put(model::Design& design, model::Place at, FillId fill) {
  design.fill_of[design.grid.cell(at)] = fill;
}

// One floor, a source every sixteen cells: every cell of it gets wet.
model::Design wet_floor(int side) {
  auto design = open_block(side, side, 2);
  for (int y = 4; y < side; y += 8) {
    for (int x = 4; x < side; x += 8) put(design, {x, y, 1}, water);
  }
  return design;
}

// Floors at every fourth level with holes that the water seeks, sources on the highest.
model::Design floors_with_holes(int side, int height) {
  auto design = open_block(side, side, height);
  for (int z = 4; z < height; z += 4) {
    for (int y = 0; y < side; ++y) {
      for (int x = 0; x < side; ++x) {
        bool const is_hole = (x + 3 * z) % 11 == 5 && (y + 5 * z) % 13 == 6;
        if (!is_hole) put(design, {x, y, z}, rock);
      }
    }
  }
  for (int y = 8; y < side; y += 16) {
    for (int x = 8; x < side; x += 16) put(design, {x, y, height - 1}, water);
  }
  return design;
}

std::vector<bool> unpowered(model::Design const& design) {
  return std::vector<bool>(design.fills.size(), false);
}

char const* remark(bool is_equal) { return is_equal ? "" : "  THE FIELDS DIFFER"; }

void compare(char const* name, model::Design const& design) {
  auto const making = best_seconds([&] { model::Arrangement(design, unpowered(design)); });
  model::Arrangement const arrangement(design, unpowered(design));
  water::Settled fresh, plain;
  auto const quick = best_seconds([&] { fresh = water::settle_fresh(arrangement); });
  auto const slow = best_seconds([&] { plain = bench::plain_search(arrangement); });
  std::size_t wet = 0;
  for (auto state : fresh.field) wet += water::is_wet(state) ? 1u : 0u;
  std::printf(
      "%-24s %9zu cells %8zu wet %3d steps: arrangement %.2f ms, fresh %8.3f ms, plain search "
      "%8.3f ms, ratio %5.1f%s\n",
      name, design.grid.volume(), wet, fresh.steps, 1e3 * making, 1e3 * quick, 1e3 * slow,
      slow / quick, remark(fresh.field == plain.field && fresh.steps == plain.steps));
}

constexpr int gates = 12;

// A floor with walls of three cells that 12 levers open, and a source every so many cells.
model::Design gated_floor(int side, int spacing) {
  auto design = open_block(side, side, 3);
  for (int y = spacing / 2; y < side; y += spacing) {
    for (int x = spacing / 2; x < side; x += spacing) put(design, {x, y, 1}, water);
  }
  for (int gate = 0; gate < gates; ++gate) {
    design.fills.push_back({model::material::rock, model::material::open, model::ExpressionId{0}});
    int const x = (gate % 4 + 1) * side / 5, y = (gate / 4 + 1) * side / 4;
    for (int i = -1; i <= 1; ++i) put(design, {x, y + i, 1}, static_cast<FillId>(3 + gate));
  }
  return design;
}

model::Arrangement assignment(model::Design const& design, unsigned row) {
  auto powered = unpowered(design);
  for (unsigned gate = 0; gate < gates; ++gate) powered[3 + gate] = (row >> gate & 1u) != 0;
  return {design, powered};
}

std::vector<model::Arrangement> assignments(model::Design const& design, unsigned count) {
  std::vector<model::Arrangement> all;
  for (unsigned row = 0; row < count; ++row) all.push_back(assignment(design, row));
  return all;
}

// Assignments of the gates: kept in lanes, unpacked from them, one by one, by plain search.
void compare_lanes(char const* name, model::Design const& design, unsigned count = 1u << gates) {
  auto const all = assignments(design, count);
  std::span<model::Arrangement const> const span(all);
  std::vector<water::Settled> lanes, fresh(all.size()), plain(all.size()), chosen;
  auto const kept = best_seconds([&] {
    for (std::size_t first = 0; first < all.size(); first += water::Lanes::most) {
      water::Lanes(span.subspan(first, std::min(water::Lanes::most, all.size() - first))).settle();
    }
  });
  auto const unpacked = best_seconds([&] { lanes = water::settle_fresh_lanes(all); });
  auto const chosen_way = best_seconds([&] { chosen = water::settle_all(all); });
  auto const one_by_one = best_seconds([&] {
    for (std::size_t i = 0; i < all.size(); ++i) fresh[i] = water::settle_fresh(all[i]);
  });
  auto const searched = best_seconds([&] {
    for (std::size_t i = 0; i < all.size(); ++i) plain[i] = bench::plain_search(all[i]);
  });
  bool is_equal = true;
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (auto const* other : {&fresh[i], &plain[i], &chosen[i]}) {
      is_equal = is_equal && lanes[i].field == other->field && lanes[i].steps == other->steps;
    }
  }
  bool const takes_lanes = water::prefers_lanes(all.size() - 1, lanes.front().field);
  std::printf(
      "%-24s %zu assignments: in lanes %.2f ms, unpacked %.2f ms, one by one %.1f ms, plain search "
      "%.1f ms; plain/lanes %.1f, plain/unpacked %.1f, one by one/lanes %.1f; settle_all takes %s, "
      "%.2f ms%s\n",
      name, all.size(), 1e3 * kept, 1e3 * unpacked, 1e3 * one_by_one, 1e3 * searched,
      searched / kept, searched / unpacked, one_by_one / kept, takes_lanes ? "lanes" : "one by one",
      1e3 * chosen_way, remark(is_equal));
}

// One gate flips after another in rested water of some assignments, as histories ask for it: in
// lanes, one by one, and as chosen.
void compare_switched(char const* name, model::Design const& design, unsigned from) {
  auto const before = assignments(design, from);
  std::vector<model::Arrangement> after;
  for (unsigned row = 0; row < from; ++row) {
    for (unsigned gate = 0; gate < gates; ++gate)
      after.push_back(assignment(design, row ^ (1u << gate)));
  }
  auto const rested = water::settle_all(before);
  std::vector<water::Switching> all;
  for (unsigned i = 0; i < after.size(); ++i)
    all.push_back({&before[i / gates], &rested[i / gates].field, &after[i]});
  std::vector<water::Settled> lanes, single(all.size()), chosen;
  auto const in_lanes = best_seconds([&] { lanes = water::settle_switched_lanes(all); });
  auto const chosen_way = best_seconds([&] { chosen = water::settle_all(all); });
  auto const one_by_one = best_seconds([&] {
    for (std::size_t i = 0; i < all.size(); ++i)
      single[i] = water::settle_switched(*all[i].before, *all[i].field, *all[i].after);
  });
  bool is_equal = true;
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (auto const* other : {&single[i], &chosen[i]})
      is_equal = is_equal && lanes[i].field == other->field && lanes[i].steps == other->steps;
  }
  std::printf(
      "%-24s %zu switches: in lanes %.2f ms, one by one %.2f ms, ratio %.1f; settle_all %.2f "
      "ms%s\n",
      name, all.size(), 1e3 * in_lanes, 1e3 * one_by_one, one_by_one / in_lanes, 1e3 * chosen_way,
      remark(is_equal));
}

void judge_small_designs() {
  std::size_t settings = 0;
  auto const all = best_seconds(
      [&] {
        settings = 0;
        for (unsigned seed = 0; seed < 300; ++seed) {
          settings += judge(laws::random_junction(seed)).histories.settings.size();
        }
      },
      2);
  std::printf("judge, small designs: %.1f us a setting (%zu settings of 300 random designs)\n",
              1e6 * all / static_cast<double>(settings), settings);
}

// The waters alone of small designs: fresh ones, and each after the next arrangement came.
void settle_small_designs() {
  std::vector<model::Design> designs;
  for (unsigned seed = 0; seed < 300; ++seed) designs.push_back(laws::random_junction(seed));
  std::size_t waters = 0;
  auto const all = best_seconds([&] {
    waters = 0;
    for (auto const& design : designs) {
      auto const arrangements = laws::arrangements_of(design);
      for (std::size_t i = 0; i < arrangements.size(); ++i) {
        auto const& next = arrangements[(i + 1) % arrangements.size()];
        auto const fresh = water::settle_fresh(arrangements[i]);
        water::settle_switched(arrangements[i], fresh.field, next);
        waters += 2;
      }
    }
  });
  std::printf("water, small designs: %.2f us a water (%zu waters, half of them switched)\n",
              1e6 * all / static_cast<double>(waters), waters);
}

}  // namespace

int main(int count, char** arguments) {
  int const side = count > 1 ? std::atoi(arguments[1]) : 1024;
  compare("wet floor 1024 x 1024", wet_floor(1024));
  compare("floors with holes", floors_with_holes(side, 16));
  compare_lanes("wet floor 16 x 16", gated_floor(16, 4));
  compare_lanes("wet floor 32 x 32", gated_floor(32, 8));
  compare_lanes("dry floor 32 x 32", gated_floor(32, 100));
  compare_lanes("wet floor, few settings", gated_floor(128, 16), 8);
  compare_switched("wet floor 32 x 32", gated_floor(32, 8), 32);
  compare_switched("wet floor 128 x 128", gated_floor(128, 16), 32);
  compare_switched("the same, few", gated_floor(128, 16), 1);
  compare_switched("scattered 128 x 128", gated_floor(128, 40), 32);
  compare_switched("dry 128 x 128", gated_floor(128, 300), 32);
  compare_switched("wet floor 512 x 512", gated_floor(512, 16), 6);
  settle_small_designs();
  judge_small_designs();
}
