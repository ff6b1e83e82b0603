#include "engine/judge.hpp"

#include <algorithm>
#include <bit>
#include <optional>
#include <utility>

#include "engine/body/route_lanes.hpp"
#include "engine/body/travel.hpp"
#include "engine/contract.hpp"
#include "engine/findings/families.hpp"
#include "engine/logic/minimal_cover.hpp"
#include "engine/logic/settled_circuit.hpp"
#include "engine/model/conditions.hpp"
#include "engine/water/lanes.hpp"

namespace leat {

using model::SignalId;

namespace {

// Signals that something here depends on, and those that nothing else does either.
std::vector<bool> used_or_own(model::Design const& design) {
  auto const& signals = design.circuit.signals;
  std::vector<bool> is_own(signals.size(), true);
  for (auto signal : design.used_elsewhere) is_own[signal] = false;
  auto roots = model::conditions_of(design);
  for (SignalId s = 0; s < signals.size(); ++s) {
    if (!is_own[s]) continue;
    if (!signals[s].is_input()) roots.push_back(signals[s].definition);
    if (signals[s].kind == model::SignalKind::latch) roots.push_back(signals[s].reset);
  }
  auto is_used = logic::used_signals(design.circuit, roots);
  for (SignalId s = 0; s < signals.size(); ++s) is_used[s] = is_used[s] || is_own[s];
  return is_used;
}

constexpr std::vector<findings::Sighting> (*families_of_water[])(findings::Basin const&) = {
    findings::water_spills, findings::swimmer_pools, findings::formed_sources,
    findings::restless_waters};

// Looks at waters, some at a time, and keeps of each only its routes and what was seen. Waters in
// which a body goes the same ways and feels the same there (RouteLanes) share one route graph;
// what the families see farther away is looked for in each water.
class Survey {
 public:
  Survey(model::Design const& design, explore::Histories const& histories)
      : design_(design),
        histories_(histories),
        outlets_(body::outlet_cells(design)),
        routes_(histories.waters.size(), design.inlets.size(), design.profiles.size()),
        trips_(histories.waters.size(),
               explore::Clearing(design.inlets.size() * design.profiles.size())) {}

  // How many waters are looked at together: what is made for them stays within bounds.
  std::uint32_t most_together() const {
    constexpr std::size_t most_cells = std::size_t{1} << 23;
    return static_cast<std::uint32_t>(
        std::clamp<std::size_t>(most_cells / design_.grid.size(), 1, body::RouteLanes::most));
  }

  // So many waters from one on.
  void visit(std::uint32_t first, std::uint32_t count) {
    std::vector<model::Arrangement> arrangements;
    for (auto w = first; w < first + count; ++w)
      arrangements.emplace_back(design_, histories_.settings[histories_.waters[w].setting]);
    auto const made =
        histories_.is_followed ? std::vector<water::Settled>{} : water::settle_all(arrangements);
    auto const field = [&](std::uint32_t i) -> water::Field const& {
      return made.empty() ? histories_.waters[first + i].field : made[i].field;
    };
    for (std::uint32_t i = 0; i < count; ++i) look(first + i, arrangements[i], field(i));
    for (model::ProfileId profile = 0; profile < design_.profiles.size(); ++profile) {
      std::vector<body::Surroundings> waters;
      for (std::uint32_t i = 0; i < count; ++i)
        waters.emplace_back(arrangements[i], field(i), design_.profiles[profile]);
      follow(first, waters, profile);
    }
  }

  tables::RouteTable const& routes() const { return routes_; }
  std::vector<explore::Clearing> const& trips() const { return trips_; }
  std::vector<findings::Finding> findings(explore::Combinations const& combinations) const {
    auto found = sightings_.gathered(design_.grid);
    for (auto& finding : found) {
      finding.rows = combinations.rows_with(finding.waters);
      for (auto& meeting : finding.meetings)
        meeting.rows = combinations.rows_with(std::exchange(meeting.waters, {}));
    }
    return found;
  }

 private:
  // At the water alone.
  void look(std::uint32_t number, model::Arrangement const& arrangement,
            water::Field const& field) {
    auto const& water = histories_.waters[number];
    auto const fresh = water.is_fresh ? water::Field{} : water::settle_fresh(arrangement).field;
    findings::Basin const basin{arrangement, field, water.is_fresh ? nullptr : &fresh,
                                water.is_settled};
    for (auto family : families_of_water) sightings_.add(number, family(basin));
  }

  // One body from all inlets. Measured (tests/bench/routes_bench): lanes cost as much as following
  // it in 4 waters one by one.
  void follow(std::uint32_t first, std::vector<body::Surroundings> const& waters,
              model::ProfileId profile) {
    constexpr std::size_t fewest_in_lanes = 8;
    std::optional<body::RouteLanes> lanes;
    if (waters.size() >= fewest_in_lanes) lanes.emplace(waters, design_.inlets, outlets_);
    for (model::InletId inlet = 0; inlet < design_.inlets.size(); ++inlet) {
      if (lanes) {
        for (auto group : lanes->alike(inlet)) follow(first, waters, group, inlet, profile);
      } else {
        for (std::size_t i = 0; i < waters.size(); ++i)
          follow(first, waters, water::Word{1} << i, inlet, profile);
      }
    }
  }

  // The same in a group of waters that are alike.
  void follow(std::uint32_t first, std::vector<body::Surroundings> const& waters, water::Word group,
              model::InletId inlet, model::ProfileId profile) {
    auto const& one = waters[static_cast<std::size_t>(std::countr_zero(group))];
    auto const graph =
        body::route_graph(one, body::entries(one, design_.inlets[inlet].cells), outlets_);
    auto const outcome = body::outcome_of(graph);
    auto const route = tables::route_of(graph, outcome);
    auto const trip = outcome.has_trap ? std::nullopt : body::longest_trip(one, graph);
    auto const all = group;
    for (; group; group &= group - 1) {
      auto const i = static_cast<std::uint32_t>(std::countr_zero(group));
      routes_.at(first + i, inlet, profile) = route;
      trips_[first + i][inlet * design_.profiles.size() + profile] = trip;
      findings::Passage const passage{design_, inlet, waters[i], graph, outcome};
      for (auto family : findings::families_beyond)
        sightings_.add(first + i, inlet, profile, family(passage));
    }
    findings::Passage const passage{design_, inlet, one, graph, outcome};
    for (auto family : findings::families_of_positions)
      add(first, all, inlet, profile, family(passage));
  }

  void add(std::uint32_t first, water::Word group, model::InletId inlet, model::ProfileId profile,
           std::vector<findings::Sighting> const& seen) {
    if (seen.empty()) return;
    for (; group; group &= group - 1) {
      sightings_.add(first + static_cast<std::uint32_t>(std::countr_zero(group)), inlet, profile,
                     seen);
    }
  }

  model::Design const& design_;
  explore::Histories const& histories_;
  body::OutletCells outlets_;
  tables::RouteTable routes_;
  std::vector<explore::Clearing> trips_;
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

// The waters by switching while they fit the budget; else the fresh ones.
explore::Histories histories_of(model::Design const& design, logic::Machine const& machine,
                                explore::States const& states, Budget const& budget,
                                Progress const& progress) {
  if (budget.follows_history) {
    auto found = explore::trace(design, machine, states, budget.history, [&](std::size_t done) {
      if (progress) progress(done, 0);
    });
    if (found.is_complete || !budget.allows_fresh) return found;
  }
  return explore::fresh(design, machine, states);
}

// States that are never reached have no reachable row: they are stated to the letter.
void state_conditions(logic::RowSet const& reachable, std::vector<findings::Finding>& findings) {
  for (auto& finding : findings) {
    bool const is_reachable = !(finding.rows & reachable).is_empty();
    finding.condition =
        logic::minimal_cover(finding.rows, is_reachable ? finding.rows | ~reachable : finding.rows)
            .cubes;
  }
}

void name_examples(explore::Explored const& explored, std::vector<findings::Finding>& findings) {
  for (auto& finding : findings) {
    if (!finding.examples.empty()) continue;
    if (auto example = explore::nearest_example(explored, finding.rows, finding.waters))
      finding.examples.push_back(std::move(*example));
  }
}

std::vector<findings::Finding> all_findings(explore::Explored const& explored, Survey const& survey,
                                            tables::RouteTable const& by_situation,
                                            std::vector<explore::Guard> const& guards) {
  auto found = survey.findings(explored.combinations);
  append(found, findings::unreached_outlets(explored, survey.routes()));
  append(found, findings::idle_signals(explored, by_situation));
  append(found, findings::twin_signals(explored));
  append(found, findings::remembering_waters(explored, survey.routes()));
  append(found, findings::table_rows(explored, by_situation));
  append(found, findings::oscillations(explored));
  append(found, findings::no_returns(explored));
  append(found, findings::unreached_states(explored));
  append(found, findings::switch_dangers(guards));
  findings::accept(explored, found);
  state_conditions(explored.combinations.reachable, found);
  name_examples(explored, found);
  sort_worst_first(found);
  return found;
}

}  // namespace

model::Circuit circuit_to_run(model::Design const& design, int most_variables) {
  auto const settled = logic::settled_circuit(design.circuit);
  auto const count = logic::variables_of(settled).size();
  auto const all = logic::variables_of(design.circuit).size();
  bool const fits =
      count <= static_cast<std::size_t>(most_variables) && all <= logic::Machine::most_variables;
  if (fits && design.used_elsewhere.empty()) return design.circuit;
  return logic::holding_unused(
      design.circuit, fits ? used_or_own(design)
                           : logic::used_signals(design.circuit, model::conditions_of(design)));
}

bool fits_machine(model::Design const& design) {
  return logic::variables_of(circuit_to_run(design)).size() <= logic::Machine::most_variables;
}

Judgement judge(model::Design const& design, Budget const& budget, Progress const& progress) {
  require(budget.most_variables <= logic::RowSet::most_inputs,
          "judge: more variables than a row can hold");
  Judgement judgement;
  judgement.expectations.resize(design.expectations.size());
  auto const circuit = circuit_to_run(design, budget.most_variables);
  auto const settled = logic::settled_circuit(circuit);
  judgement.variables = logic::variables_of(settled);
  if (static_cast<int>(judgement.variables.size()) > budget.most_variables) return judgement;
  if (logic::variables_of(circuit).size() > logic::Machine::most_variables) {
    judgement.variables = logic::variables_of(circuit);
    return judgement;
  }
  logic::Machine const machine(circuit);
  logic::Truth const truth(settled, judgement.variables);
  auto const states = explore::reach(machine);
  auto& histories = judgement.histories;
  auto& combinations = judgement.combinations;
  explore::Explored const explored{design, machine, states, histories, combinations, truth};
  judgement.unended = states.unended;
  if (!states.is_complete && !states.unquiet_as_built) return judgement;
  if (states.size() == 0) {
    combinations.reachable = logic::RowSet(static_cast<int>(judgement.variables.size()));
    judgement.findings = findings::oscillations(explored);
    return judgement;
  }
  histories = histories_of(design, machine, states, budget, progress);
  if (!histories.is_complete) {
    histories = {};
    return judgement;
  }
  combinations = explore::combine(machine, states, histories, judgement.variables);
  Survey survey(design, histories);
  auto const count = histories.waters.size();
  for (std::size_t water = 0; water < count;) {
    auto const together = std::min<std::size_t>(survey.most_together(), count - water);
    survey.visit(static_cast<std::uint32_t>(water), static_cast<std::uint32_t>(together));
    for (auto const end = water + together; water < end; ++water) {
      if (progress) progress(water + 1, count);
    }
  }
  judgement.routes = tables::by_situation(combinations, survey.routes());
  judgement.trips = survey.trips();
  judgement.switchings = explore::switchings(explored, budget.switching, progress);
  judgement.guards = explore::guards(explored, judgement.switchings, survey.trips());
  judgement.findings = all_findings(explored, survey, judgement.routes, judgement.guards);
  judgement.expectations =
      verdicts::judge_expectations({explored, survey.routes(), judgement.routes, judgement.trips,
                                    judgement.switchings.is_complete, judgement.findings});
  judgement.has_restless = !states.unquiet.empty();
  judgement.is_decided = true;
  return judgement;
}

Solved solve(model::Design const& design, std::vector<bool> const& given) {
  require(given.size() == design.circuit.signals.size(), "solve: one value a signal");
  auto circuit = logic::settled_circuit(design.circuit);
  for (std::size_t s = 0; s < circuit.signals.size(); ++s) circuit.signals[s].starts_on = given[s];
  logic::Truth const truth(circuit, {});
  std::vector<bool> values(circuit.signals.size());
  for (SignalId s = 0; s < values.size(); ++s) values[s] = truth.of_signal(s).contains(0);
  model::Arrangement arrangement(design,
                                 explore::setting_in(design, explore::fills_drawn(design), values));
  auto settled = water::settle_fresh(arrangement);
  return {std::move(arrangement), std::move(settled.field), settled.steps, std::move(values),
          settled.is_settled};
}

std::optional<Solved> solve_after(model::Design const& design, std::vector<SignalId> const& flips) {
  auto const circuit = circuit_to_run(design);
  logic::Machine const machine(circuit);
  auto walked = explore::walk(design, machine, flips);
  if (!walked.is_quiet) return std::nullopt;
  return Solved{{design, walked.setting},
                std::move(walked.field),
                walked.steps,
                std::move(walked.signals),
                walked.is_settled};
}

}  // namespace leat
