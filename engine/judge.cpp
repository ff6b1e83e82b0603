#include "engine/judge.hpp"

#include <algorithm>

#include "engine/contract.hpp"
#include "engine/findings/families.hpp"
#include "engine/water/settle.hpp"

namespace leat {

using model::SignalId;

namespace {

std::vector<SignalId> all_inputs(model::Circuit const& circuit) {
  std::vector<SignalId> inputs;
  for (SignalId s = 0; s < circuit.signals.size(); ++s) {
    if (circuit.signals[s].is_input()) inputs.push_back(s);
  }
  return inputs;
}

// Every expression by which an input can matter to the judgement.
std::vector<model::ExpressionId> conditions_of(model::Design const& design) {
  std::vector<model::ExpressionId> roots;
  auto const add = [&](std::optional<model::ExpressionId> const& id) {
    if (id) roots.push_back(*id);
  };
  for (auto const& fill : design.fills) add(fill.control);
  for (auto const& expectation : design.expectations) add(expectation.condition);
  for (auto const& acceptance : design.acceptances) add(acceptance.condition);
  return roots;
}

std::vector<SignalId> inputs_to_run(model::Design const& design, Budget const& budget) {
  auto inputs = all_inputs(design.circuit);
  if (static_cast<int>(inputs.size()) <= budget.most_inputs) return inputs;
  auto const is_used = logic::used_signals(design.circuit, conditions_of(design));
  std::erase_if(inputs, [&](SignalId s) { return !is_used[s]; });
  return inputs;
}

tables::Route route_of(body::RouteGraph const& graph, body::Outcome const& outcome) {
  tables::Route route{
      outcome.verdict, outcome.outlets, {}, outcome.spills, !outcome.hanging.empty()};
  for (std::uint32_t i = 0; i < graph.size(); ++i) {
    if (outcome.is_trapped[i]) route.trapped.push_back(graph.positions[i].feet);
  }
  std::sort(route.trapped.begin(), route.trapped.end());
  route.trapped.erase(std::unique(route.trapped.begin(), route.trapped.end()), route.trapped.end());
  return route;
}

constexpr std::vector<findings::Sighting> (*families_of_ways[])(findings::Passage const&) = {
    findings::rests,
    findings::endless_loops,
    findings::split_routes,
    findings::unsure_moves,
    findings::foot_lifts,
    findings::body_spills,
    findings::tight_inlets,
    findings::hard_landings,
    findings::thin_cushions,
    findings::narrow_pits,
    findings::long_head_runs,
    findings::stacked_sources,
    findings::diagonal_currents,
    findings::open_edges};

constexpr std::vector<findings::Sighting> (*families_of_water[])(findings::Basin const&) = {
    findings::water_spills, findings::swimmer_pools};

// Solves setting after setting and keeps of each only its routes and what was seen.
class Survey {
 public:
  Survey(model::Design const& design, explore::Combinations const& combinations)
      : design_(design),
        combinations_(combinations),
        outlets_(body::outlet_cells(design)),
        routes_(combinations.settings.size(), design.inlets.size(), design.profiles.size()) {}

  void visit(std::uint32_t setting) {
    model::Arrangement const arrangement(design_, combinations_.settings[setting]);
    auto const field = water::settle_fresh(arrangement).field;
    for (auto family : families_of_water) sightings_.add(setting, family({arrangement, field}));
    for (model::ProfileId profile = 0; profile < design_.profiles.size(); ++profile) {
      body::Surroundings const here(arrangement, field, design_.profiles[profile]);
      for (model::InletId inlet = 0; inlet < design_.inlets.size(); ++inlet) {
        follow(setting, here, inlet, profile);
      }
    }
  }

  tables::RouteTable take_routes() { return std::move(routes_); }
  std::vector<findings::Finding> findings() const {
    return sightings_.gathered(design_.grid, combinations_);
  }

 private:
  void follow(std::uint32_t setting, body::Surroundings const& here, model::InletId inlet,
              model::ProfileId profile) {
    auto const graph =
        body::route_graph(here, body::entries(here, design_.inlets[inlet].cells), outlets_);
    auto const outcome = body::outcome_of(graph);
    routes_.at(setting, inlet, profile) = route_of(graph, outcome);
    findings::Passage const passage{design_, inlet, here, graph, outcome};
    for (auto family : families_of_ways) sightings_.add(setting, inlet, profile, family(passage));
  }

  model::Design const& design_;
  explore::Combinations const& combinations_;
  body::OutletCells outlets_;
  tables::RouteTable routes_;
  findings::Sightings sightings_;
};

void append(std::vector<findings::Finding>& to, std::vector<findings::Finding> more) {
  std::move(more.begin(), more.end(), std::back_inserter(to));
}

void sort_worst_first(std::vector<findings::Finding>& findings) {
  std::stable_sort(findings.begin(), findings.end(), [](auto const& a, auto const& b) {
    if (a.severity != b.severity) return a.severity > b.severity;
    if (a.kind != b.kind) return a.kind < b.kind;
    return a.cells < b.cells;
  });
}

}  // namespace

Judgement judge(model::Design const& design, Budget const& budget, Progress const& progress) {
  require(budget.most_inputs <= logic::RowSet::most_inputs,
          "judge: more inputs than a row can hold");
  Judgement judgement;
  judgement.inputs = inputs_to_run(design, budget);
  if (static_cast<int>(judgement.inputs.size()) > budget.most_inputs) {
    judgement.expectations.resize(design.expectations.size());
    return judgement;
  }
  logic::Truth const truth(design.circuit, judgement.inputs);
  judgement.combinations = explore::combine(design, truth);
  auto const count = judgement.combinations.settings.size();
  Survey survey(design, judgement.combinations);
  for (std::uint32_t setting = 0; setting < count; ++setting) {
    survey.visit(setting);
    if (progress) progress(setting + 1, count);
  }
  judgement.routes = survey.take_routes();
  auto& findings = judgement.findings;
  findings = survey.findings();
  append(findings, findings::unreached_outlets(design, judgement.combinations, judgement.routes));
  append(findings, findings::idle_signals(design, judgement.combinations, judgement.routes));
  append(findings, findings::twin_signals(design, truth));
  findings::accept(design, truth, findings);
  for (auto& finding : findings) {
    finding.condition = logic::irredundant_cover(finding.rows, finding.rows);
  }
  sort_worst_first(findings);
  judgement.expectations = verdicts::judge_expectations(design, truth, judgement.combinations,
                                                        judgement.routes, findings);
  judgement.is_decided = true;
  return judgement;
}

Solved solve(model::Design const& design, std::vector<bool> const& input_values) {
  require(input_values.size() == design.circuit.signals.size(), "solve: one value a signal");
  auto circuit = design.circuit;
  for (std::size_t s = 0; s < circuit.signals.size(); ++s)
    circuit.signals[s].starts_on = input_values[s];
  logic::Truth const truth(circuit, {});
  std::vector<bool> values(circuit.signals.size());
  for (SignalId s = 0; s < values.size(); ++s) values[s] = truth.of_signal(s).contains(0);
  model::Arrangement arrangement(design,
                                 explore::setting_in(design, explore::fills_drawn(design), values));
  auto settled = water::settle_fresh(arrangement);
  return {std::move(arrangement), std::move(settled.field), settled.steps};
}

}  // namespace leat
