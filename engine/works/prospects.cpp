#include "engine/works/prospects.hpp"

namespace leat::works {

using logic::Diagram;
using model::InletId;
using model::ProfileId;

Prospects::Prospects(Network const& network, Diagram& diagram)
    : network_(network),
      diagram_(diagram),
      last_first_(network.inlet_count()),
      known_(network.profile_count() * prospect_count) {
  for (InletId inlet = 0; inlet < last_first_.size(); ++inlet)
    last_first_[last_first_.size() - 1 - network.places()[inlet]] = inlet;
}

Function Prospects::of(Prospect prospect, InletId inlet, ProfileId profile) {
  return all(prospect, profile)[inlet];
}

Prospects::ByInlet const& Prospects::all(Prospect prospect, ProfileId profile) {
  auto const which = profile * prospect_count + static_cast<std::size_t>(prospect);
  if (known_[which].empty()) known_[which] = answered(prospect, profile);
  return known_[which];
}

namespace {

constexpr auto no_outlet = [](model::OutletId) { return false; };
constexpr auto no_way = [](Way const&) { return false; };

}  // namespace

Prospects::ByInlet Prospects::reaching(std::vector<bool> const& is_meant, ProfileId profile) {
  return swept(profile, ByInlet(network_.inlet_count(), Diagram::never), no_way,
               [&](model::OutletId outlet) { return is_meant[outlet]; });
}

Prospects::ByInlet Prospects::answered(Prospect prospect, ProfileId profile) {
  ByInlet nothing(network_.inlet_count(), Diagram::never);
  auto const on_the_way = [&](ByInlet from, bool Way::*is_so) {
    return swept(profile, std::move(from), [&](Way const& way) { return way.*is_so; }, no_outlet);
  };
  switch (prospect) {
    case Prospect::arrival:
      return swept(profile, std::move(nothing), no_way, [](model::OutletId) { return true; });
    case Prospect::parting:
      return swept(profile, forks(profile), no_way, no_outlet);
    case Prospect::trapped:
      return on_the_way(held(profile), &Way::has_trap);
    case Prospect::spilled:
      return on_the_way(std::move(nothing), &Way::spills);
    case Prospect::unsure:
      return on_the_way(std::move(nothing), &Way::is_unsure);
    case Prospect::barred:
      return on_the_way(std::move(nothing), &Way::is_barred);
    default:
      return on_the_way(std::move(nothing), &Way::is_unknown);
  }
}

// What holds at each inlet itself, and what is met from it on.
template <class OnTheWay, class AtItsEnd>
Prospects::ByInlet Prospects::swept(ProfileId profile, ByInlet from, OnTheWay is_on,
                                    AtItsEnd is_at) {
  for (bool is_new = true; is_new;) {
    is_new = false;
    for (auto inlet : last_first_) {
      auto condition = from[inlet];
      for (auto const& way : network_.ways(inlet, profile)) {
        auto met = is_on(way) ? Diagram::always : Diagram::never;
        for (auto outlet : way.outlets) {
          auto const& join = network_.join_of(outlet);
          if (join)
            met = diagram_.either(met, from[join->inlet]);
          else if (is_at(outlet))
            met = Diagram::always;
        }
        condition = diagram_.either(condition, diagram_.both(way.condition, met));
      }
      is_new = is_new || condition != from[inlet];
      from[inlet] = condition;
    }
    is_new = is_new && network_.has_cycles();
  }
  return from;
}

// Without a way out. Who does not get in at an entrance is nowhere; who does not get in further on
// is held where it was delivered.
Prospects::ByInlet Prospects::held(ProfileId profile) {
  auto held = all(Prospect::arrival, profile);
  for (InletId inlet = 0; inlet < held.size(); ++inlet) {
    held[inlet] = !held[inlet];
    if (!network_.is_entrance(inlet)) continue;
    for (auto const& way : network_.ways(inlet, profile)) {
      if (way.is_barred && way.outlets.empty())
        held[inlet] = diagram_.both(held[inlet], !way.condition);
    }
  }
  return held;
}

// Where a way has several outlets, or several ways that have some are open.
Prospects::ByInlet Prospects::forks(ProfileId profile) {
  ByInlet forks(network_.inlet_count(), Diagram::never);
  for (InletId inlet = 0; inlet < forks.size(); ++inlet) {
    auto open = Diagram::never;
    for (auto const& way : network_.ways(inlet, profile)) {
      if (way.outlets.empty()) continue;
      auto const fork = way.outlets.size() > 1 ? way.condition : diagram_.both(open, way.condition);
      forks[inlet] = diagram_.either(forks[inlet], fork);
      open = diagram_.either(open, way.condition);
    }
  }
  return forks;
}

}  // namespace leat::works
