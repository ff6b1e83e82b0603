#include "engine/playback/playback.hpp"

#include <map>

#include "engine/water/settling.hpp"
#include "engine/water/step.hpp"
#include "engine/water/survey.hpp"
#include "tests/laws/random_junction.hpp"
#include "tests/support/catch.hpp"
#include "tests/support/draw.hpp"

using namespace leat;
using playback::Detail;
using playback::Playback;

namespace {

using Looks = std::map<std::uint32_t, playback::Look>;

void put(Playback const& found, std::uint32_t run, Looks& looks) {
  if (run == playback::none) return;
  for (auto patch : found.runs[run]) {
    for (auto const& change : found.patches[patch]) looks[change.at] = found.looks[change.to];
  }
}

// What a reader of the playback sees at a node: the runs along its parents, one after the other.
Looks seen_at(Playback const& found, std::uint32_t number) {
  auto const& node = found.nodes[number];
  Looks looks;
  if (node.parent == playback::none) {
    put(found, found.filling, looks);
  } else {
    looks = seen_at(found, node.parent);
    put(found, found.nodes[node.parent].run[node.event], looks);
  }
  return looks;
}

std::vector<model::SignalId> flips_to(Playback const& found, std::uint32_t number) {
  auto const& node = found.nodes[number];
  if (node.parent == playback::none) return {};
  auto flips = flips_to(found, node.parent);
  flips.push_back(found.inputs[node.event]);
  return flips;
}

void check_looks(model::Design const& design, Solved const& solved, Looks const& looks) {
  std::size_t wet = 0;
  water::Moment const now{solved.arrangement, solved.field};
  for (auto const& cell : water::survey(now)) {
    auto const& look = looks.at(playback::number_of(design.grid, cell.cell));
    CHECK(look.state == cell.state);
    CHECK(look.is_placed == cell.is_placed);
    CHECK((look.east > 0) == (cell.current.x > 0));
    CHECK((look.south < 0) == (cell.current.y < 0));
    ++wet;
  }
  for (auto const& [at, look] : looks) wet -= look == playback::Look{} ? 0u : 1u;
  CHECK(wet == 0);
}

// The stances in a pool, put together from those of its parents.
std::map<std::uint32_t, std::uint32_t> stances_in(Playback const& found, std::uint32_t number,
                                                  std::size_t profile) {
  auto const& pool = found.pools[number];
  std::map<std::uint32_t, std::uint32_t> stances;
  if (pool.parent != playback::none) stances = stances_in(found, pool.parent, profile);
  for (auto const& change : found.patches[pool.stances[profile]]) stances[change.at] = change.to;
  return stances;
}

}  // namespace

TEST_CASE("the waters of a playback are those of the engine, on any way of events") {
  for (unsigned seed = 0; seed < 40; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const found = playback::record(design, design.circuit);
    REQUIRE(found.detail == Detail::whole);
    for (std::uint32_t n = 0; n < found.nodes.size(); ++n) {
      auto const solved = solve_after(design, flips_to(found, n));
      REQUIRE(solved);
      check_looks(design, *solved, seen_at(found, n));
    }
  }
}

TEST_CASE("every event leads where its node says, with the water of its run") {
  for (unsigned seed = 100; seed < 120; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const found = playback::record(design, design.circuit);
    for (std::uint32_t n = 0; n < found.nodes.size(); ++n) {
      for (std::size_t event = 0; event < found.inputs.size(); ++event) {
        auto looks = seen_at(found, n);
        put(found, found.nodes[n].run[event], looks);
        auto other = seen_at(found, found.nodes[n].next[event]);
        std::erase_if(looks, [](auto const& entry) { return entry.second == playback::Look{}; });
        std::erase_if(other, [](auto const& entry) { return entry.second == playback::Look{}; });
        CHECK(looks == other);
      }
    }
  }
}

TEST_CASE("each step of a run is one step of the reference water") {
  for (unsigned seed = 200; seed < 215; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const found = playback::record(design, design.circuit);
    for (std::uint32_t n = 0; n < found.nodes.size(); ++n) {
      auto const before = solve_after(design, flips_to(found, n));
      for (std::size_t event = 0; event < found.inputs.size(); ++event) {
        auto const run = found.nodes[n].run[event];
        if (run == playback::none) continue;
        auto const& next = found.nodes[found.nodes[n].next[event]];
        model::Arrangement const after(design, found.pools[next.pool].setting);
        auto field = water::switched(before->arrangement, before->field, after);
        auto looks = seen_at(found, n);
        for (auto patch : found.runs[run]) {
          for (auto const& change : found.patches[patch]) looks[change.at] = found.looks[change.to];
          check_looks(design, {after, field}, looks);
          field = water::step(after, field);
        }
        CHECK(field == water::step(after, field));
      }
    }
  }
}

TEST_CASE("the moves of a playback are those of the body, wherever it is put") {
  for (unsigned seed = 0; seed < 20; ++seed) {
    auto const design = laws::random_junction(seed);
    auto const found = playback::record(design, design.circuit);
    auto const outlets = body::outlet_cells(design);
    for (std::uint32_t n = 0; n < found.nodes.size(); ++n) {
      auto const solved = solve_after(design, flips_to(found, n));
      for (model::ProfileId p = 0; p < design.profiles.size(); ++p) {
        body::Surroundings const here(solved->arrangement, solved->field, design.profiles[p]);
        auto const stances = stances_in(found, found.nodes[n].pool, p);
        for (auto const& port : design.inlets) {
          auto const graph = body::route_graph(here, body::entries(here, port.cells), outlets);
          for (std::uint32_t i = 0; i < graph.size(); ++i) {
            if (graph.ends[i] == body::End::spill) continue;
            auto const spot = playback::Spot::number(design.grid, graph.positions[i]);
            auto const& stance = found.stances[stances.at(spot)];
            CHECK(stance.end == graph.ends[i]);
            CHECK(stance.outlet == graph.outlets[i]);
            REQUIRE(stance.ways.size() == graph.first_step[i + 1] - graph.first_step[i]);
            for (std::size_t w = 0; w < stance.ways.size(); ++w) {
              auto const& step = graph.steps[graph.first_step[i] + w];
              auto const from = design.grid.place(graph.positions[i].feet);
              auto const to = design.grid.place(graph.positions[step.to].feet);
              CHECK(stance.ways[w].rule == step.rule);
              CHECK(stance.ways[w].is_sure == step.is_sure);
              CHECK(from.x + stance.ways[w].east == to.x);
              CHECK(from.y + stance.ways[w].south == to.y);
              CHECK(from.z + stance.ways[w].up == to.z);
            }
          }
        }
      }
    }
  }
}

TEST_CASE("levers that do not meddle with each other's water cost their own changes alone") {
  // Two channels, each with a gate; between them rock.
  auto const design = drawn::draw({{"XXXXXX", "XXXXXX", "XXXXXX"},
                                   {"w.a...", "XXXXXX", "w.c..."},
                                   {"......", "XXXXXX", "......"}});
  auto const found = playback::record(design, design.circuit);
  REQUIRE(found.nodes.size() == 4);
  CHECK(found.runs.size() == 5);  // each gate opens and shuts, and the filling
}

TEST_CASE("a playback has less detail where the budget is small, and says so") {
  auto const design = drawn::draw({{"XXXXXX"}, {"w.ac.."}, {"......"}});
  auto const detail = [&](playback::Budget const& budget) {
    return playback::record(design, design.circuit, budget).detail;
  };
  playback::Budget budget;
  CHECK(detail(budget) == Detail::whole);
  budget.most_runs = 2;
  CHECK(detail(budget) == Detail::without_steps);
  budget.most_nodes = 2;
  CHECK(detail(budget) == Detail::as_built);
  budget.most_cells = 3;
  CHECK(detail(budget) == Detail::nothing);
}

TEST_CASE("where waters remember too much, each state has its fresh water") {
  auto const design = drawn::remembering();
  playback::Budget budget;
  budget.most_nodes = 4;
  auto const found = playback::record(design, design.circuit, budget);
  REQUIRE(found.detail == Detail::fresh);
  REQUIRE(found.nodes.size() == 4);
  for (std::uint32_t n = 0; n < 4; ++n) {
    auto const& signals = found.nodes[n].signals;
    check_looks(design, drawn::settled(design, {signals[0], signals[1]}), seen_at(found, n));
  }
}

TEST_CASE("the state as built alone still has its water and its moves") {
  auto const design = drawn::draw({{"XXXXXX"}, {"w.ac.."}, {"......"}});
  playback::Budget budget;
  budget.most_nodes = 1;
  auto const found = playback::record(design, design.circuit, budget);
  REQUIRE(found.nodes.size() == 1);
  CHECK(found.inputs.empty());
  check_looks(design, drawn::settled(design), seen_at(found, 0));
}

TEST_CASE("a difference of two lists says what is new, other or gone") {
  CHECK(playback::difference({{1, 5}, {2, 6}, {4, 7}}, {{1, 5}, {2, 8}, {3, 9}}) ==
        playback::Patch{{2, 8}, {3, 9}, {4, 0}});
  CHECK(playback::difference({}, {}).empty());
}
