#include <algorithm>
#include <cstdio>
#include <ctime>
#include <map>

#include "engine/body/route_lanes.hpp"
#include "engine/water/lanes.hpp"
#include "tests/laws/random_junction.hpp"

// How long it takes to follow bodies from all inlets in many waters: in lanes, and water by water.
// Each figure is the best of five runs in one process, by the processor time of that process;
// ratios belong to one run on one machine.
namespace {

using namespace leat;

template <class Work>
double best_seconds(Work work) {
  double best = 1e9;
  for (int run = 0; run < 5; ++run) {
    auto const start = std::clock();
    work();
    best = std::min(best, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  return best;
}

struct Waters {
  Waters(model::Design const& design, std::vector<explore::Setting> const& settings) {
    for (auto const& setting : settings) arrangements.emplace_back(design, setting);
    for (auto& settled : water::settle_all(arrangements))
      fields.push_back(std::move(settled.field));
  }
  std::vector<body::Surroundings> for_body(model::Profile const& profile) const {
    std::vector<body::Surroundings> all;
    for (std::size_t i = 0; i < fields.size(); ++i)
      all.emplace_back(arrangements[i], fields[i], profile);
    return all;
  }
  std::vector<model::Arrangement> arrangements;
  std::vector<water::Field> fields;
};

using Verdicts = std::vector<body::Verdict>;

Verdicts one_by_one(std::vector<body::Surroundings> const& waters, model::Design const& design,
                    body::OutletCells const& outlets) {
  Verdicts verdicts;
  for (auto const& here : waters) {
    for (auto const& inlet : design.inlets) {
      auto const graph = body::route_graph(here, body::entries(here, inlet.cells), outlets);
      verdicts.push_back(body::outcome_of(graph).verdict);
    }
  }
  return verdicts;
}

Verdicts in_lanes(std::vector<body::Surroundings> const& waters, model::Design const& design,
                  body::OutletCells const& outlets) {
  Verdicts verdicts;
  auto const most = body::RouteLanes::most;
  for (std::size_t first = 0; first < waters.size(); first += most) {
    auto const some = std::span(waters).subspan(first, std::min(most, waters.size() - first));
    body::RouteLanes const lanes(some, design.inlets, outlets);
    for (std::size_t lane = 0; lane < some.size(); ++lane) {
      for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet)
        verdicts.push_back(lanes.verdict(inlet, lane));
    }
  }
  return verdicts;
}

struct Times {
  double lanes = 0, plain = 0;
  bool is_equal = true;
};

Times time_of(model::Design const& design, std::vector<explore::Setting> const& settings) {
  auto const outlets = body::outlet_cells(design);
  auto const waters = Waters(design, settings);
  auto const all = waters.for_body(design.profiles.front());
  Verdicts of_lanes, of_plain;
  Times times;
  times.lanes = best_seconds([&] { of_lanes = in_lanes(all, design, outlets); });
  times.plain = best_seconds([&] { of_plain = one_by_one(all, design, outlets); });
  times.is_equal = of_lanes == of_plain;
  return times;
}

void tell(char const* name, std::size_t waters, Times const& times) {
  std::printf("%-30s %4zu waters: in lanes %8.3f ms, one by one %8.3f ms, ratio %5.1f%s\n", name,
              waters, 1e3 * times.lanes, 1e3 * times.plain, times.plain / times.lanes,
              times.is_equal ? "" : "  THE VERDICTS DIFFER");
}

constexpr unsigned gates = 12;
constexpr model::FillId rock = model::material::rock, open = model::material::open;

// A block of rock with so many levels, and a fill for each of twelve gates that open.
model::Design gated_rock(int width, int depth, int height) {
  model::Design design;
  design.grid = model::Grid(width, depth, height);
  for (model::MaterialId id = 0; id < 3; ++id) design.fills.push_back({id, id, {}});
  for (unsigned gate = 0; gate < gates; ++gate)
    design.fills.push_back({rock, open, model::ExpressionId{0}});
  design.fill_of.assign(design.grid.size(), rock);
  design.profiles = {model::Profile{}};
  return design;
}

std::vector<explore::Setting> settings_of(model::Design const& design, unsigned count) {
  std::vector<explore::Setting> all;
  for (unsigned row = 0; row < count; ++row) {
    explore::Setting setting(design.fills.size(), false);
    for (unsigned gate = 0; gate < gates; ++gate) setting[3 + gate] = (row * 37u >> gate & 1u) != 0;
    all.push_back(std::move(setting));
  }
  return all;
}

void put(model::Design& design, model::Place at, model::FillId fill) {
  design.fill_of[design.grid.cell(at)] = fill;
}

model::Port port(model::Design const& design, model::Place at) { return {{design.grid.cell(at)}}; }

// Wet all over, with walls of three cells that open: bodies spread over the floor.
model::Design floor(int side) {
  auto design = gated_rock(side, side, 4);
  for (int z = 1; z < 4; ++z) {
    for (int y = 0; y < side; ++y) {
      for (int x = 0; x < side; ++x) put(design, {x, y, z}, open);
    }
  }
  for (int y = 4; y < side; y += 8) {
    for (int x = 4; x < side; x += 8) put(design, {x, y, 1}, model::material::water);
  }
  for (int gate = 0; gate < static_cast<int>(gates); ++gate) {
    int const x = (gate % 4 + 1) * side / 5, y = (gate / 4 + 1) * side / 4;
    for (int i = -1; i <= 1; ++i) put(design, {x, y + i, 1}, static_cast<model::FillId>(3 + gate));
  }
  for (int i = 0; i < 4; ++i)
    design.inlets.push_back(port(design, {5 + 8 * (i % 2), 5 + 8 * (i / 2), 1}));
  design.outlets = {port(design, {0, 0, 1}), port(design, {side - 1, side - 1, 1})};
  return design;
}

// A channel of twelve steps, each with a gate in its side: bodies go straight on or aside.
model::Design channel() {
  int const length = 8 * static_cast<int>(gates), height = static_cast<int>(gates) + 3;
  auto design = gated_rock(length + 1, 3, height);
  for (int step = 0; step < static_cast<int>(gates); ++step) {
    int const z = static_cast<int>(gates) - step, x = 8 * step;
    for (int level = z; level <= z + 1; ++level) {
      for (int at = x; at <= x + 8; ++at) put(design, {at, 2, level}, open);
      put(design, {x + 4, 1, level}, static_cast<model::FillId>(3 + step));
      put(design, {x + 4, 0, level}, open);
    }
    if (step > 0) put(design, {x, 2, z + 2}, open);
    put(design, {x, 2, z}, model::material::water);
    design.outlets.push_back(port(design, {x + 4, 0, z}));
  }
  design.outlets.push_back(port(design, {length, 2, 1}));
  design.inlets = {port(design, {1, 2, static_cast<int>(gates)})};
  return design;
}

void small_designs() {
  std::map<std::size_t, std::pair<Times, std::size_t>> by_count;
  for (unsigned seed = 0; seed < 200; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const settings = laws::settings_of(design);
    auto const times = time_of(design, settings);
    auto& [sum, designs] = by_count[settings.size()];
    sum.lanes += times.lanes;
    sum.plain += times.plain;
    sum.is_equal = sum.is_equal && times.is_equal;
    ++designs;
  }
  for (auto const& [count, timed] : by_count) tell("random junctions", count, timed.first);
}

}  // namespace

int main() {
  for (unsigned count : {2u, 4u, 8u, 16u, 64u, 1024u}) {
    auto const wide = floor(32), long_one = channel();
    tell("wet floor 32 x 32", count, time_of(wide, settings_of(wide, count)));
    tell("channel with side gates", count, time_of(long_one, settings_of(long_one, count)));
  }
  small_designs();
}
