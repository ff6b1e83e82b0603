#include "engine/compare/behaviour.hpp"

#include <algorithm>
#include <unordered_map>

#include "engine/works/knowledge.hpp"
#include "engine/works/longest_times.hpp"
#include "engine/works/showing.hpp"

namespace leat::compare {

using logic::Diagram;
using model::SignalId;

namespace {

// Sets of rows over some variables of a revision, as functions on the common ground.
class Rows {
 public:
  Rows(std::vector<SignalId> const& variables, std::vector<SignalId> const& joint, Ground& ground)
      : ground_(ground) {
    for (auto variable : variables)
      inputs_.push_back(ground.conditions().of_signal(joint[variable]));
  }
  Function of(logic::RowSet const& rows) const { return ground_.conditions().of(rows, inputs_); }

 private:
  Ground& ground_;
  std::vector<Function> inputs_;
};

Sighting sighting_of(findings::Finding const& finding, Function condition) {
  return {finding.kind,    finding.severity, finding.inlets,
          finding.outlets, finding.profiles, finding.signals,
          finding.event,   finding.cells,    finding.accepted_by.has_value(),
          condition,       &finding,         {}};
}

void add_sightings(Judgement const& judged, Rows const& rows, std::vector<Sighting>& sightings) {
  bool const has_rows = judged.is_decided;
  for (auto const& finding : judged.findings)
    sightings.push_back(
        sighting_of(finding, has_rows ? rows.of(finding.rows) : Function(Diagram::always)));
}

works::Passage passage_of(model::Design const& design, Judgement const& judged, Rows const& rows,
                          model::InletId inlet, model::ProfileId profile) {
  auto const where = [&](auto const& is_so) {
    return rows.of(judged.combinations.rows_where([&](std::uint32_t situation) {
      return is_so(judged.routes.at(situation, inlet, profile));
    }));
  };
  works::Passage passage;
  passage.inlet = inlet;
  passage.profile = profile;
  for (model::OutletId outlet = 0; outlet < design.outlets.size(); ++outlet) {
    auto const condition = where([&](tables::Route const& route) {
      return std::binary_search(route.outlets.begin(), route.outlets.end(), outlet);
    });
    if (condition != Diagram::never) passage.ends.push_back({outlet, condition});
  }
  passage.trapped = where([](auto const& route) { return !route.trapped.empty(); });
  passage.spilled = where([](auto const& route) { return route.spills; });
  passage.unsure = where([](auto const& route) { return route.is_unsure; });
  passage.barred = where(tables::is_barred);
  return passage;
}

void add_trip(model::InletId inlet, model::ProfileId profile, works::LongestTime const& trip,
              std::vector<Duration>& durations) {
  durations.push_back({Duration::Kind::trip, inlet, profile, 0, false, trip.ticks, trip.is_known});
}

void add_guard(works::Change const& change, works::LongestGuard const& guard,
               std::vector<Duration>& durations) {
  auto const& [event, goes_on] = change;
  auto const& [wait, clearing] = guard;
  durations.push_back({Duration::Kind::wait, 0, 0, event, goes_on, wait.ticks, wait.is_known});
  durations.push_back(
      {Duration::Kind::clearing, 0, 0, event, goes_on, clearing.ticks, clearing.is_known});
}

// The longest trip over every water, by inlet and profile.
void add_trips(model::Design const& design, Judgement const& judged,
               std::vector<Duration>& durations) {
  bool const is_known = judged.is_decided && judged.histories.is_followed;
  for (model::InletId i = 0; i < design.inlets.size(); ++i) {
    for (model::ProfileId p = 0; p < design.profiles.size(); ++p) {
      works::LongestTime trip{0, is_known};
      for (auto const& clearing : judged.trips)
        trip.ticks = explore::longer(trip.ticks, clearing[i * design.profiles.size() + p]);
      add_trip(i, p, trip, durations);
    }
  }
}

void add_guards(model::Design const& design, Judgement const& judged,
                std::vector<Duration>& durations) {
  if (judged.is_decided && judged.switchings.is_complete) {
    for (auto const& guard : judged.guards)
      add_guard({guard.event, guard.goes_on}, {{guard.wait, true}, {guard.clearing, true}},
                durations);
    return;
  }
  auto const& signals = design.circuit.signals;
  for (SignalId input = 0; input < signals.size(); ++input) {
    if (!signals[input].is_input()) continue;
    for (bool goes_on : {true, false})
      add_guard({input, goes_on}, {{0, false}, {0, false}}, durations);
  }
}

template <class Judged>
std::vector<model::FindingKind> kinds_unknown(Judged const& judged) {
  std::vector<model::FindingKind> kinds;
  for (auto const& row : model::finding_table)
    if (!works::was_looked_for(row.kind, judged)) kinds.push_back(row.kind);
  return kinds;
}

// A function of one diagram told in another one, variable by variable.
class Translation {
 public:
  Translation(Diagram const& from, Diagram& to, std::vector<Function> meaning)
      : from_(from), to_(to), meaning_(std::move(meaning)) {}

  Function of(Function f) {
    auto const level = from_.level(f);
    if (level == Diagram::below_all) return f;
    if (auto const known = known_.find(f.edge); known != known_.end()) return known->second;
    auto const [off, on] = from_.branches(f, level);
    auto const if_off = of(off), if_on = of(on);
    auto const result = to_.choice(meaning_[level], if_on, if_off);
    known_.emplace(f.edge, result);
    return result;
  }

 private:
  Diagram const& from_;
  Diagram& to_;
  std::vector<Function> meaning_;  // by level
  std::unordered_map<std::uint32_t, Function> known_;
};

// Found in a part: told of its first copy, and when it shows in each other one.
void add_piece(works::WorksJudgement const& judged, works::Piece const& piece,
               Translation& translation, std::vector<Sighting>& sightings) {
  auto const& copies = judged.islands.parts[piece.part].copies;
  for (auto const& finding : piece.judged->findings) {
    std::vector<Function> shows;
    for (auto copy : copies)
      shows.push_back(translation.of(
          works::showing(judged, piece, judged.islands.copies[copy], works::occasion_of(finding))));
    sightings.push_back(sighting_of(finding, shows.front()));
    sightings.back().elsewhere.assign(shows.begin() + 1, shows.end());
  }
}

void add_times(model::Design const& plant, works::WorksJudgement const& judged,
               std::vector<Duration>& durations) {
  auto const trips = works::longest_trips(plant, judged);
  for (std::size_t p = 0; p < judged.passages.size(); ++p) {
    auto const inlet = judged.passages.inlet(p);
    auto const profile = judged.passages.profile(p);
    add_trip(inlet, profile, trips[inlet * plant.profiles.size() + profile], durations);
  }
  for (auto const& [change, guard] : works::longest_guards(plant, judged))
    add_guard(change, guard, durations);
}

works::Passage translated(works::Passage passage, Translation& translation) {
  for (auto& end : passage.ends) end.condition = translation.of(end.condition);
  for (auto* part : {&passage.trapped, &passage.spilled, &passage.unsure, &passage.barred,
                     &passage.unknown, &passage.parting})
    *part = translation.of(*part);
  return passage;
}

}  // namespace

bool Behaviour::was_looked_for(model::FindingKind kind) const {
  return std::find(kinds_unknown.begin(), kinds_unknown.end(), kind) == kinds_unknown.end();
}

bool Behaviour::is_whole() const {
  return are_routes_whole && kinds_unknown.empty() &&
         std::all_of(durations.begin(), durations.end(),
                     [](Duration const& duration) { return duration.is_known; });
}

Behaviour behaviour_of(model::Design const& design, Judgement const& judged,
                       std::vector<SignalId> const& signals, Ground& ground) {
  Behaviour behaviour;
  behaviour.are_routes_whole = judged.is_decided && !judged.has_restless &&
                               judged.histories.is_followed && explore::do_rest(judged.histories);
  behaviour.kinds_unknown = kinds_unknown(judged);
  Rows const rows(judged.variables, signals, ground);
  add_sightings(judged, rows, behaviour.sightings);
  for (auto const& claim : judged.expectations) behaviour.verdicts.push_back(claim.verdict);
  add_trips(design, judged, behaviour.durations);
  add_guards(design, judged, behaviour.durations);
  if (!judged.is_decided) return behaviour;
  for (model::InletId i = 0; i < design.inlets.size(); ++i) {
    for (model::ProfileId p = 0; p < design.profiles.size(); ++p)
      behaviour.passages.push_back(passage_of(design, judged, rows, i, p));
  }
  return behaviour;
}

Behaviour behaviour_of(model::Design const& plant, works::WorksJudgement const& judged,
                       std::vector<SignalId> const& signals, Ground& ground) {
  Behaviour behaviour;
  auto const& conditions = *judged.conditions;
  std::vector<Function> meaning;
  for (auto variable : conditions.variables())
    meaning.push_back(ground.conditions().of_signal(signals[variable]));
  Translation translation(conditions.diagram(), ground.diagram(), std::move(meaning));
  for (auto const& passage : judged.passages)
    behaviour.passages.push_back(translated(passage, translation));
  behaviour.are_routes_whole =
      !works::is_incomplete(judged) && works::are_findings_complete(judged) &&
      !conditions.diagram().has_run_out() && conditions.is_reachable_known() &&
      !conditions.may_be_restless() && works::is_history_known(judged) &&
      works::do_waters_rest(judged) && !judged.may_be_wider;
  behaviour.kinds_unknown = kinds_unknown(judged);
  for (auto const& piece : works::pieces_of(judged))
    add_piece(judged, piece, translation, behaviour.sightings);
  for (auto const& claim : judged.expectations) behaviour.verdicts.push_back(claim.verdict);
  add_times(plant, judged, behaviour.durations);
  for (auto const& found : judged.findings) {
    behaviour.sightings.push_back(sighting_of(found.finding, translation.of(found.condition)));
    behaviour.sightings.back().is_proved = found.is_proved;
  }
  return behaviour;
}

}  // namespace leat::compare
