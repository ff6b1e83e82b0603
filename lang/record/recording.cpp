#include "engine/logic/diagram_cover.hpp"
#include "lang/record/record.hpp"
#include "lang/render/words.hpp"

namespace leat::record {

using logic::Diagram;

namespace {

// Conditions with more products than this are not written down.
constexpr std::size_t most_products = 4096;

std::string_view word_of(compare::Duration::Kind kind) {
  switch (kind) {
    case compare::Duration::Kind::trip:
      return "trip";
    case compare::Duration::Kind::wait:
      return "wait";
    case compare::Duration::Kind::clearing:
      return "clearing";
  }
  return {};
}

class Recording {
 public:
  Recording(source::SourceMap const& map, compare::Ground& ground) : map_(map), ground_(ground) {
    for (auto variable : ground.conditions().variables())
      names_.push_back(map.signals[variable].name);
  }

  bool is_too_long() const { return is_too_long_; }

  Route route(works::Passage const& passage) {
    Route route{map_.inlets[passage.inlet].name,
                map_.profiles[passage.profile].name,
                {},
                sum(passage.trapped),
                sum(passage.spilled),
                sum(passage.unsure),
                sum(passage.barred)};
    for (auto const& end : passage.ends) {
      auto when = sum(end.condition);
      if (!when.empty()) route.ends.push_back({map_.outlets[end.outlet].name, std::move(when)});
    }
    return route;
  }

  Finding finding(compare::Sighting const& sighting) {
    return {std::string(model::row_of(sighting.kind).name),
            render::names_of(map_.inlets, sighting.inlets),
            render::names_of(map_.outlets, sighting.outlets),
            render::names_of(map_.profiles, sighting.profiles),
            render::names_of(map_.signals, sighting.signals),
            sighting.event ? map_.signals[*sighting.event].name : std::string(),
            sighting.is_accepted,
            sum(sighting.condition)};
  }

  Time time(compare::Duration const& duration) const {
    Time time;
    time.of = word_of(duration.kind);
    time.ticks = duration.ticks;
    if (duration.kind == compare::Duration::Kind::trip) {
      time.inlet = map_.inlets[duration.inlet].name;
      time.body = map_.profiles[duration.profile].name;
    } else {
      time.event = map_.signals[duration.event].name;
      time.goes_on = duration.goes_on;
    }
    return time;
  }

 private:
  Sum sum(compare::Function f) {
    auto& diagram = ground_.diagram();
    auto const reachable = ground_.reachable();
    auto const cover = logic::irredundant_cover(diagram, diagram.both(f, reachable),
                                                diagram.either(f, !reachable), most_products);
    Sum sum;
    is_too_long_ = is_too_long_ || !cover;
    if (!cover) return sum;
    for (auto const& product : *cover) {
      auto& literals = sum.emplace_back();
      for (auto const& literal : product)
        literals.push_back({names_[literal.level], literal.is_on});
    }
    return sum;
  }

  source::SourceMap const& map_;
  compare::Ground& ground_;
  std::vector<std::string> names_;
  bool is_too_long_ = false;
};

}  // namespace

std::optional<Junction> recorded(source::SourceMap const& map, compare::Behaviour const& behaviour,
                                 compare::Ground& ground) {
  Recording recording(map, ground);
  Junction junction{map.junction.name, {}, {}, {}};
  for (auto const& passage : behaviour.passages)
    junction.routes.push_back(recording.route(passage));
  for (auto const& sighting : behaviour.sightings)
    junction.findings.push_back(recording.finding(sighting));
  for (auto const& duration : behaviour.durations) {
    if (duration.is_known) junction.times.push_back(recording.time(duration));
  }
  return recording.is_too_long() ? std::nullopt : std::optional(std::move(junction));
}

}  // namespace leat::record
