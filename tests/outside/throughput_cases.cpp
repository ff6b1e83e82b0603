#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <random>

#include "engine/body/capacity.hpp"
#include "engine/body/travel.hpp"
#include "engine/water/settle.hpp"
#include "tests/laws/random_junction.hpp"

// Route graphs of random junctions, and what the engine says of their throughput and trips: one
// JSON object a line, for networkx_throughput.py.
//
//     throughput_cases COUNT
namespace {

using namespace leat;
using Json = nlohmann::ordered_json;

// Numbers of motion that random junctions leave alone, so that nothing hangs on the standard ones.
void vary_motion(model::Design& design, unsigned seed) {
  if (seed % 3 == 0) return;
  std::mt19937 dice(seed);
  using model::Rule;
  for (auto rule : {Rule::ticks_per_second, Rule::gravity, Rule::air_drag, Rule::water_drag,
                    Rule::water_gravity, Rule::upward_stroke, Rule::stroke_chance, Rule::water_push,
                    Rule::body_width, Rule::body_height}) {
    auto const& row = model::rule_table[static_cast<std::size_t>(rule)];
    auto const least = std::max(row.least, row.standard / 2);
    auto const most = std::min(row.most, row.standard * 2);
    design.practice.set(
        rule, least + static_cast<int>(dice() % static_cast<unsigned long>(most - least + 1)));
  }
}

char const* name(body::MoveRule rule) {
  constexpr char const* names[] = {"fall", "drift", "sink", "rise", "push", "climb"};
  return names[static_cast<std::size_t>(rule)];
}

Json positions(body::Surroundings const& here, body::RouteGraph const& graph) {
  Json list = Json::array();
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    auto const feet = graph.positions[i].feet;
    bool const is_inside = graph.ends[i] != body::End::spill;
    auto const push = is_inside ? here.push(feet) : body::Push{};
    auto const place = here.grid().place(feet);
    Json position{{"cell", feet}, {"at", {place.x, place.y, place.z}}};
    position["wet"] = is_inside && here.is_wet(feet);
    position["push"] = {push.x, push.y};
    position["outlet"] =
        graph.ends[i] == body::End::outlet ? Json(graph.outlets[i]) : Json(nullptr);
    list.push_back(std::move(position));
  }
  return list;
}

Json moves(body::RouteGraph const& graph) {
  Json list = Json::array();
  for (std::uint32_t from = 0; from < graph.size(); ++from) {
    for (auto s = graph.first_step[from]; s < graph.first_step[from + 1]; ++s)
      list.push_back({from, graph.steps[s].to, name(graph.steps[s].rule)});
  }
  return list;
}

Json ticks(std::optional<int> count) { return count ? Json(*count) : Json(nullptr); }

Json answers(body::Surroundings const& here, body::RouteGraph const& graph, std::size_t outlets) {
  Json list = Json::array();
  for (model::OutletId outlet = 0; outlet < outlets; ++outlet) {
    auto const found = body::throughput(here, graph, outlet);
    Json narrowest = Json::array();
    for (auto const& narrow : found.narrowest) narrowest.push_back({narrow.cell, narrow.rate});
    bool const is_limited = found.rate != body::no_limit;
    list.push_back({{"outlet", outlet},
                    {"rate", is_limited ? Json(found.rate) : Json(nullptr)},
                    {"narrowest", narrowest},
                    {"quickest", ticks(body::quickest_trip(here, graph, outlet))},
                    {"longest", ticks(body::longest_trip(here, graph, outlet))}});
  }
  return list;
}

Json practice_of(model::Design const& design) {
  Json practice;
  for (auto const& row : model::rule_table)
    practice[std::string(row.name)] = design.practice[row.rule];
  return practice;
}

void print_cases(unsigned seed) {
  auto design = laws::random_junction(seed, 1 + static_cast<int>(seed % 2));
  vary_motion(design, seed);
  auto const outlets = body::outlet_cells(design);
  for (auto const& arrangement : laws::arrangements_of(design)) {
    auto const field = water::settle_fresh(arrangement).field;
    for (auto const& profile : design.profiles) {
      body::Surroundings const here(arrangement, field, profile);
      for (auto const& inlet : design.inlets) {
        auto const graph = body::route_graph(here, body::entries(here, inlet.cells), outlets);
        Json const one{{"seed", seed},
                       {"practice", practice_of(design)},
                       {"footprint", profile.footprint},
                       {"height", profile.height},
                       {"positions", positions(here, graph)},
                       {"moves", moves(graph)},
                       {"starts", graph.starts},
                       {"answers", answers(here, graph, design.outlets.size())}};
        std::printf("%s\n", one.dump().c_str());
      }
    }
  }
}

}  // namespace

int main(int count, char** arguments) {
  auto const designs = count > 1 ? std::strtoul(arguments[1], nullptr, 10) : 1;
  for (unsigned seed = 0; seed < designs; ++seed) print_cases(seed);
}
