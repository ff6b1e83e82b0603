#include <algorithm>
#include <unordered_map>

#include "lang/record/record.hpp"

namespace leat::record {

using logic::Diagram;

namespace {

class Names {
 public:
  explicit Names(std::vector<source::Named> const& named) {
    for (std::uint32_t i = 0; i < named.size(); ++i) id_of_.emplace(named[i].name, i);
  }
  std::optional<std::uint32_t> find(std::string const& name) const {
    auto const at = id_of_.find(name);
    return at == id_of_.end() ? std::nullopt : std::optional(at->second);
  }

 private:
  std::unordered_map<std::string, std::uint32_t> id_of_;
};

std::optional<model::FindingKind> kind_of(std::string const& name) {
  for (auto const& row : model::finding_table) {
    if (row.name == name) return row.kind;
  }
  return std::nullopt;
}

// Tells entries in ids; each gives none where it names something there is no more.
class Recalling {
 public:
  Recalling(source::SourceMap const& map, compare::Ground& ground)
      : ground_(ground),
        signals_(map.signals),
        inlets_(map.inlets),
        outlets_(map.outlets),
        bodies_(map.profiles) {}

  std::optional<works::Passage> passage(Route const& route) {
    is_known_ = true;
    works::Passage passage;
    passage.inlet = id(inlets_, route.inlet);
    passage.profile = id(bodies_, route.body);
    for (auto const& end : route.ends)
      passage.ends.push_back({id(outlets_, end.outlet), function(end.when)});
    passage.trapped = function(route.trapped);
    passage.spilled = function(route.spilled);
    passage.unsure = function(route.unsure);
    passage.barred = function(route.barred);
    return is_known_ ? std::optional(std::move(passage)) : std::nullopt;
  }

  std::optional<compare::Sighting> sighting(Finding const& finding) {
    is_known_ = true;
    auto const kind = kind_of(finding.name);
    if (!kind) return std::nullopt;
    compare::Sighting sighting;
    sighting.kind = *kind;
    sighting.severity = model::row_of(*kind).severity;
    sighting.inlets = ids(inlets_, finding.inlets);
    sighting.outlets = ids(outlets_, finding.outlets);
    sighting.profiles = ids(bodies_, finding.bodies);
    sighting.signals = ids(signals_, finding.signals);
    if (!finding.event.empty()) sighting.event = id(signals_, finding.event);
    sighting.is_accepted = finding.is_accepted;
    sighting.condition = function(finding.when);
    return is_known_ ? std::optional(std::move(sighting)) : std::nullopt;
  }

  std::optional<compare::Duration> duration(Time const& time) {
    is_known_ = true;
    compare::Duration duration;
    duration.ticks = time.ticks;
    if (time.of == "trip") {
      duration.kind = compare::Duration::Kind::trip;
      duration.inlet = id(inlets_, time.inlet);
      duration.profile = id(bodies_, time.body);
    } else {
      duration.kind =
          time.of == "wait" ? compare::Duration::Kind::wait : compare::Duration::Kind::clearing;
      duration.event = id(signals_, time.event);
      // Nobody flips anything else.
      is_known_ = is_known_ && ground_.circuit().signals[duration.event].is_input();
      duration.goes_on = time.goes_on;
    }
    return is_known_ ? std::optional(duration) : std::nullopt;
  }

 private:
  std::uint32_t id(Names const& names, std::string const& name) {
    auto const found = names.find(name);
    is_known_ = is_known_ && found.has_value();
    return found.value_or(0);
  }
  std::vector<std::uint32_t> ids(Names const& names, std::vector<std::string> const& wanted) {
    std::vector<std::uint32_t> result;
    for (auto const& name : wanted) result.push_back(id(names, name));
    return result;
  }

  compare::Function function(Sum const& sum) {
    auto& diagram = ground_.diagram();
    auto any = Diagram::never;
    for (auto const& product : sum) {
      auto all = Diagram::always;
      for (auto const& literal : product) {
        auto const signal = id(signals_, literal.signal);
        is_known_ = is_known_ && ground_.counts(signal);
        if (!is_known_) return Diagram::never;
        auto const value = ground_.conditions().of_signal(signal);
        all = diagram.both(all, literal.is_on ? value : !value);
      }
      any = diagram.either(any, all);
    }
    return any;
  }

  compare::Ground& ground_;
  Names signals_, inlets_, outlets_, bodies_;
  bool is_known_ = true;
};

}  // namespace

Recalled recalled(Junction const& junction, source::SourceMap const& map, compare::Ground& ground) {
  Recalled result;
  Recalling recalling(map, ground);
  for (std::size_t i = 0; i < junction.routes.size(); ++i) {
    if (auto passage = recalling.passage(junction.routes[i]))
      result.behaviour.passages.push_back(std::move(*passage));
    else
      result.obsolete_routes.push_back(i);
  }
  for (std::size_t i = 0; i < junction.findings.size(); ++i) {
    if (auto sighting = recalling.sighting(junction.findings[i]))
      result.behaviour.sightings.push_back(std::move(*sighting));
    else
      result.obsolete_findings.push_back(i);
  }
  for (std::size_t i = 0; i < junction.times.size(); ++i) {
    if (auto duration = recalling.duration(junction.times[i]))
      result.behaviour.durations.push_back(*duration);
    else
      result.obsolete_times.push_back(i);
  }
  return result;
}

}  // namespace leat::record
