#pragma once
#include <algorithm>
#include <vector>

#include "engine/works/network.hpp"
#include "engine/works/prospects.hpp"

namespace leat::works {

// What can become of bodies from every inlet on (see Prospects), in some algebra of conditions: it
// has a Value, nothing() and everything(), both(), either() and opposite(), and of(), the value of
// a condition of the network.
template <class Algebra>
class Sweep {
 public:
  using Value = typename Algebra::Value;
  using ByInlet = std::vector<Value>;

  Sweep(Network const& network, Algebra algebra)
      : network_(network), algebra_(std::move(algebra)), last_first_(network.inlet_count()) {
    for (model::InletId inlet = 0; inlet < last_first_.size(); ++inlet)
      last_first_[last_first_.size() - 1 - network.places()[inlet]] = inlet;
  }

  ByInlet answer(Prospect prospect, model::ProfileId profile) {
    auto const on_the_way = [&](ByInlet from, bool Way::*is_so) {
      return met_on_the_way(std::move(from), is_so, profile);
    };
    switch (prospect) {
      case Prospect::arrival:
        return reaching([&](model::OutletId) { return everything(); }, profile);
      case Prospect::parting:
        return swept(
            profile, forks(profile), [&](Way const&) { return nothing(); },
            [&](model::OutletId) { return nothing(); });
      case Prospect::trapped:
        return trapped(answer(Prospect::arrival, profile), profile);
      case Prospect::spilled:
        return on_the_way(none(), &Way::spills);
      case Prospect::unsure:
        return on_the_way(none(), &Way::is_unsure);
      case Prospect::barred:
        return on_the_way(none(), &Way::is_barred);
      case Prospect::round:
        return round(profile);
      case Prospect::circling:
        return swept(
            profile, round(profile), [&](Way const&) { return nothing(); },
            [&](model::OutletId) { return nothing(); });
      default:
        return on_the_way(none(), &Way::is_unknown);
    }
  }

  // `arriving`: the answer to that prospect.
  ByInlet trapped(ByInlet arriving, model::ProfileId profile) {
    return met_on_the_way(held(std::move(arriving), profile), &Way::has_trap, profile);
  }

  // What can be reached of the outlets of the plant; `told` says what of each is meant.
  template <class Told>
  ByInlet reaching(Told told, model::ProfileId profile) {
    return swept(
        profile, none(), [&](Way const&) { return nothing(); }, told);
  }

 private:
  static Value nothing() { return Algebra::nothing(); }
  static Value everything() { return Algebra::everything(); }
  ByInlet none() const { return ByInlet(network_.inlet_count(), nothing()); }

  ByInlet met_on_the_way(ByInlet from, bool Way::*is_so, model::ProfileId profile) {
    return swept(
        profile, std::move(from),
        [&](Way const& way) { return way.*is_so ? everything() : nothing(); },
        [&](model::OutletId) { return nothing(); });
  }

  // What holds at each inlet itself, and what is met from it on.
  template <class OnTheWay, class AtItsEnd>
  ByInlet swept(model::ProfileId profile, ByInlet from, OnTheWay on, AtItsEnd at) {
    for (bool is_new = true; is_new;) {
      is_new = false;
      for (auto inlet : last_first_) {
        auto value = from[inlet];
        for (auto const& way : network_.ways(inlet, profile)) {
          auto met = on(way);
          for (auto outlet : way.outlets) {
            auto const& join = network_.join_of(outlet);
            met = algebra_.either(met, join ? from[join->inlet] : at(outlet));
          }
          if (met == nothing()) continue;
          value = algebra_.either(value, algebra_.both(algebra_.of(way.condition), met));
        }
        is_new = is_new || value != from[inlet];
        from[inlet] = value;
      }
      is_new = is_new && network_.has_cycles();
    }
    return from;
  }

  // Without a way out. Who does not get in at an entrance is nowhere; who does not get in further
  // on, in some water that can be there, is held where it was delivered.
  ByInlet held(ByInlet arriving, model::ProfileId profile) {
    auto held = std::move(arriving);
    for (model::InletId inlet = 0; inlet < held.size(); ++inlet) {
      held[inlet] = algebra_.opposite(held[inlet]);
      for (auto const& way : network_.ways(inlet, profile)) {
        if (!way.is_barred) continue;
        auto const barred = algebra_.of(way.condition);
        if (!network_.is_entrance(inlet))
          held[inlet] = algebra_.either(held[inlet], barred);
        else if (way.outlets.empty())
          held[inlet] = algebra_.both(held[inlet], algebra_.opposite(barred));
      }
    }
    return held;
  }

  // Where some way is open, and none that can be come by from there on ends: at an outlet of the
  // plant, in its island, or in what is not known.
  ByInlet round(model::ProfileId profile) {
    auto const ends = swept(
        profile, none(), [&](Way const& way) { return may_end(way) ? everything() : nothing(); },
        [&](model::OutletId) { return everything(); });
    auto round = none();
    for (model::InletId inlet = 0; inlet < round.size(); ++inlet) {
      for (auto const& way : network_.ways(inlet, profile)) {
        if (may_end(way)) continue;
        auto const open = algebra_.both(algebra_.of(way.condition), algebra_.opposite(ends[inlet]));
        round[inlet] = algebra_.either(round[inlet], open);
      }
    }
    return round;
  }

  static bool may_end(Way const& way) {
    return way.outlets.empty() || way.has_trap || way.spills || way.is_barred || way.is_unknown;
  }

  // Where a way has several outlets, or several ways that have some are open.
  ByInlet forks(model::ProfileId profile) {
    auto forks = none();
    for (model::InletId inlet = 0; inlet < forks.size(); ++inlet) {
      auto open = nothing();
      for (auto const& way : network_.ways(inlet, profile)) {
        if (way.outlets.empty()) continue;
        auto const condition = algebra_.of(way.condition);
        auto const fork = way.outlets.size() > 1 ? condition : algebra_.both(open, condition);
        forks[inlet] = algebra_.either(forks[inlet], fork);
        open = algebra_.either(open, condition);
      }
    }
    return forks;
  }

  Network const& network_;
  Algebra algebra_;
  std::vector<model::InletId> last_first_;
};

}  // namespace leat::works
