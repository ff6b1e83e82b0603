#include <algorithm>

#include "engine/verdicts/claims.hpp"

namespace leat::verdicts {

using body::Verdict;
using logic::RowSet;
using model::Claim;

namespace {

bool reaches(tables::Route const& route, std::optional<std::uint32_t> outlet) {
  return std::find(route.outlets.begin(), route.outlets.end(), *outlet) != route.outlets.end();
}

bool keeps(model::Expectation const& expectation, tables::Route const& route) {
  switch (expectation.claim) {
    case Claim::reaches:
      return route.verdict == Verdict::certain && reaches(route, expectation.outlet);
    case Claim::may_reach:
      return reaches(route, expectation.outlet);
    case Claim::never_reaches:
      return !reaches(route, expectation.outlet);
    case Claim::reaches_nothing:
      return route.outlets.empty();
    case Claim::never_trapped:
      return route.trapped.empty();
    case Claim::never_spilled:
      return !route.spills;
    case Claim::never_split:
      return route.verdict != Verdict::split;
    case Claim::never_doubtful:
      return route.verdict != Verdict::doubtful;
    case Claim::never_lost:
      return route.verdict != Verdict::lost;
    case Claim::no_findings:
    case Claim::finds:
    case Claim::clears:
    case Claim::deals:
      break;
  }
  return true;
}

// Every inlet and profile the expectation speaks of.
template <class Visit>
void for_each_traveller(model::Expectation const& expectation, Results const& results,
                        Visit&& visit) {
  for (model::InletId inlet = 0; inlet < results.by_water.inlets(); ++inlet) {
    for (model::ProfileId profile = 0; profile < results.by_water.profiles(); ++profile) {
      if (speaks_of(expectation, inlet, profile)) visit(inlet, profile);
    }
  }
}

// The waters that break the claim by themselves; where only several together do, none.
std::vector<std::uint32_t> breaking_waters(model::Expectation const& expectation,
                                           Results const& results, model::InletId inlet,
                                           model::ProfileId profile) {
  std::vector<std::uint32_t> waters;
  for (std::uint32_t w = 0; w < results.explored.histories.waters.size(); ++w) {
    if (!keeps(expectation, results.by_water.at(w, inlet, profile))) waters.push_back(w);
  }
  return waters;
}

// The rows in which one traveller breaks the claim.
struct Broken {
  model::InletId inlet = 0;
  model::ProfileId profile = 0;
  RowSet rows;
};

// What the nearest traveller that breaks the claim does, in a water in which it does so.
void show_traveller(JudgedExpectation& judged, model::Expectation const& expectation,
                    Results const& results, std::vector<Broken> const& all) {
  auto const row = judged.example->row;
  auto const broken = std::find_if(all.begin(), all.end(),
                                   [&](Broken const& one) { return one.rows.contains(row); });
  judged.inlet = broken->inlet;
  judged.profile = broken->profile;
  auto const waters = breaking_waters(expectation, results, broken->inlet, broken->profile);
  auto const own = explore::nearest_example(results.explored, broken->rows, waters);
  bool const is_alone = own && !waters.empty();
  if (is_alone) judged.example = own;
  auto const& table = is_alone ? results.by_water : results.by_situation;
  auto const which = is_alone ? *own->water : results.explored.combinations.situation_of_row[row];
  judged.route = table.at(which, broken->inlet, broken->profile);
}

JudgedExpectation judge_everywhere(model::Expectation const& expectation, Results const& results,
                                   RowSet const& spoken_of) {
  JudgedExpectation judged;
  judged.verdict = Truthfulness::holds;
  RowSet failing(spoken_of.inputs());
  std::vector<Broken> all;
  for_each_traveller(expectation, results, [&](model::InletId inlet, model::ProfileId profile) {
    auto rows = spoken_of & results.explored.combinations.rows_where([&](std::uint32_t situation) {
      return !keeps(expectation, results.by_situation.at(situation, inlet, profile));
    });
    failing |= rows;
    all.push_back({inlet, profile, std::move(rows)});
  });
  if (failing.is_empty()) return judged;
  name_violation(judged, results, std::move(failing));
  show_traveller(judged, expectation, results, all);
  return judged;
}

JudgedExpectation judge_after(model::Expectation const& expectation, Results const& results) {
  JudgedExpectation judged;
  std::optional<explore::Example> moment;
  bool const is_known =
      travel_after_events(expectation, results, moment, [&](Travel const& travel) {
        if (judged.inlet) return;
        auto route = tables::route_of(travel.graph, body::outcome_of(travel.graph));
        if (keeps(expectation, route)) return;
        judged.inlet = travel.inlet;
        judged.profile = travel.profile;
        judged.route = std::move(route);
      });
  judged.never_rests = !is_known;
  if (!is_known) return judged;
  judged.verdict = Truthfulness::holds;
  if (judged.inlet) name_moment(judged, results, std::move(moment));
  return judged;
}

}  // namespace

JudgedExpectation judge_route_claim(model::Expectation const& expectation, Results const& results,
                                    RowSet const& spoken_of) {
  if (!expectation.events.empty()) return judge_after(expectation, results);
  return judge_everywhere(expectation, results, spoken_of);
}

}  // namespace leat::verdicts
