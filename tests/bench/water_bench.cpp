#include <chrono>
#include <cstdio>

#include "engine/water/settle.hpp"
#include "tests/laws/random_junction.hpp"

// How long the water and a judgement take. Ratios belong to one run on one machine.
//
//     water_bench [SIDE]    SIDE of the second floor, 1024 where it is not said
namespace {

using namespace leat;
using model::FillId;
using Clock = std::chrono::steady_clock;

template <class Work>
double seconds(Work work) {
  auto const start = Clock::now();
  work();
  return std::chrono::duration<double>(Clock::now() - start).count();
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

void compare(char const* name, model::Design const& design) {
  model::Arrangement const arrangement(design, std::vector<bool>(design.fills.size(), false));
  water::Settled fresh, reference;
  auto const quick = seconds([&] { fresh = water::settle_fresh(arrangement); });
  auto const plain = seconds([&] { reference = water::settle_reference(arrangement); });
  std::size_t wet = 0;
  for (auto state : fresh.field) wet += water::is_wet(state) ? 1u : 0u;
  std::printf(
      "%-24s %10zu cells %9zu wet %4d steps: fresh %8.4f s, reference %8.4f s, ratio %6.1f%s\n",
      name, design.grid.volume(), wet, fresh.steps, quick, plain, plain / quick,
      fresh.field == reference.field ? "" : "  THE FIELDS DIFFER");
}

void judge_small_designs() {
  std::size_t settings = 0;
  auto const all = seconds([&] {
    for (unsigned seed = 0; seed < 300; ++seed) {
      settings += judge(laws::random_junction(seed)).histories.settings.size();
    }
  });
  std::printf("judge, small designs: %.1f us a setting (%zu settings of 300 random designs)\n",
              1e6 * all / static_cast<double>(settings), settings);
}

}  // namespace

int main(int count, char** arguments) {
  int const side = count > 1 ? std::atoi(arguments[1]) : 1024;
  compare("wet floor 1024 x 1024", wet_floor(1024));
  compare("floors with holes", floors_with_holes(side, 16));
  judge_small_designs();
}
