#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

bool speaks_of(model::Expectation const& expectation, model::InletId inlet,
               model::ProfileId profile) {
  return (!expectation.inlet || *expectation.inlet == inlet) &&
         (!expectation.profile || *expectation.profile == profile);
}

bool travel_after_events(model::Expectation const& expectation, Results const& results,
                         std::optional<explore::Example>& moment,
                         std::function<void(Travel const&)> const& visit) {
  auto const& design = results.explored.design;
  auto flips = explore::flips_of(design.circuit, expectation.events);
  auto const walked = explore::walk(design, results.explored.machine, flips);
  if (!walked.is_quiet || !walked.is_settled) return false;
  model::Arrangement const arrangement(design, walked.setting);
  auto const outlets = body::outlet_cells(design);
  for (model::ProfileId profile = 0; profile < design.profiles.size(); ++profile) {
    body::Surroundings const here(arrangement, walked.field, design.profiles[profile]);
    for (model::InletId inlet = 0; inlet < design.inlets.size(); ++inlet) {
      if (!speaks_of(expectation, inlet, profile)) continue;
      auto const graph =
          body::route_graph(here, body::entries(here, design.inlets[inlet].cells), outlets);
      visit({inlet, profile, here, graph});
    }
  }
  moment = explore::example_of(design, results.explored.combinations, walked, std::move(flips));
  return true;
}

void name_moment(JudgedExpectation& judged, Results const& results,
                 std::optional<explore::Example> moment) {
  judged.verdict = Truthfulness::violated;
  judged.failing = logic::RowSet(results.explored.variable_count());
  judged.failing.insert(moment->row);
  judged.example = std::move(moment);
}

}  // namespace leat::verdicts
