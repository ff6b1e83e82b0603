#include "engine/works/longest_times.hpp"

#include "engine/model/joins.hpp"

namespace leat::works {

using model::InletId;
using model::ProfileId;

namespace {

LongestTime sum(LongestTime const& a, LongestTime const& b) {
  auto const ticks = a.ticks && b.ticks ? std::optional(*a.ticks + *b.ticks) : std::nullopt;
  return {ticks, a.is_known && b.is_known};
}

LongestTime longer(LongestTime const& a, LongestTime const& b) {
  return {explore::longer(a.ticks, b.ticks), a.is_known && b.is_known};
}

// By inlet, then profile: the longest trip up to where its islands end.
std::vector<LongestTime> trips_of_islands(model::Design const& plant,
                                          WorksJudgement const& judged) {
  auto const profiles = plant.profiles.size();
  std::vector<LongestTime> trips(plant.inlets.size() * profiles);
  for (auto const& copy : judged.islands.copies) {
    auto const& part = judged.parts[copy.part];
    bool const is_known = part.is_decided && part.histories.is_followed;
    for (std::size_t own = 0; own < copy.inlets.size(); ++own) {
      for (ProfileId profile = 0; profile < profiles; ++profile) {
        auto& trip = trips[copy.inlets[own] * profiles + profile];
        trip.is_known = trip.is_known && is_known;
        for (auto const& of_water : part.trips)
          trip.ticks = explore::longer(trip.ticks, of_water[own * profiles + profile]);
      }
    }
  }
  return trips;
}

// Where a body goes on from an inlet, and after how long.
struct Onward {
  InletId inlet = 0;
  int ticks = 0;
};
using Onwards = std::vector<std::vector<Onward>>;  // by inlet
Onwards onward_of(model::Design const& plant, Passages const& passages, ProfileId profile) {
  model::Joins const joins(plant);
  Onwards onward(plant.inlets.size());
  for (InletId inlet = 0; inlet < onward.size(); ++inlet) {
    for (auto outlet : passages.outlets_from(inlet, profile)) {
      if (auto const& join = joins.from(outlet))
        onward[inlet].push_back({join->inlet, join->ticks.value_or(0)});
    }
  }
  return onward;
}

// Each inlet after those that it leads to; those from which joins lead round are missing.
std::vector<InletId> last_first(Onwards const& onward) {
  std::vector<std::vector<InletId>> from(onward.size());
  std::vector<std::size_t> open(onward.size());
  std::vector<InletId> order;
  for (InletId inlet = 0; inlet < onward.size(); ++inlet) {
    open[inlet] = onward[inlet].size();
    if (open[inlet] == 0) order.push_back(inlet);
    for (auto const& next : onward[inlet]) from[next.inlet].push_back(inlet);
  }
  for (std::size_t i = 0; i < order.size(); ++i)
    for (auto inlet : from[order[i]])
      if (--open[inlet] == 0) order.push_back(inlet);
  return order;
}

// What changes ask for, collected by the inputs that bring them.
class LongestGuards {
 public:
  LongestGuards(model::Circuit const& plant, WorksJudgement const& judged)
      : plant_(plant), judged_(judged) {}

  void take(std::uint32_t part) {
    auto const& own = judged_.parts[part];
    if (!own.is_decided || !own.switchings.is_complete) return take_unknown(part);
    auto const& first = first_copy(judged_.islands, part);
    for (auto const& guard : own.guards) {
      for (auto c : judged_.islands.parts[part].copies)
        add(change_in(judged_.islands.copies[c], first, {guard.event, guard.goes_on}),
            {{guard.wait, true}, {guard.clearing, true}});
    }
  }

  std::map<Change, LongestGuard> longest() {
    // Then it is not known which inputs of wires bring what.
    if (judged_.conditions->diagram().has_run_out()) {
      for (auto variable : judged_.conditions->variables())
        if (plant_.signals[variable].is_input()) add_unknown(variable);
    }
    return std::move(longest_);
  }

 private:
  void take_unknown(std::uint32_t part) {
    auto const& own = judged_.islands.parts[part];
    for (auto signal : support(own)) {
      if (!own.design.circuit.signals[signal].is_input()) continue;
      for (auto c : own.copies) add_unknown(judged_.islands.copies[c].signals[signal]);
    }
  }

  void add_unknown(model::SignalId signal) {
    for (bool goes_on : {true, false}) add({signal, goes_on}, {{0, false}, {0, false}});
  }

  void add(Change const& change, LongestGuard const& guard) {
    for (auto const& flip : flips_that_bring(change, plant_, *judged_.conditions)) {
      if (!plant_.signals[flip.first].is_input()) continue;
      auto& [wait, clearing] = longest_[flip];
      wait = longer(wait, guard.wait);
      clearing = longer(clearing, guard.clearing);
    }
  }

  model::Circuit const& plant_;
  WorksJudgement const& judged_;
  std::map<Change, LongestGuard> longest_;
};

}  // namespace

std::vector<LongestTime> longest_trips(model::Design const& plant, WorksJudgement const& judged) {
  auto const profiles = plant.profiles.size();
  auto const own = trips_of_islands(plant, judged);
  // Joins lead round, unless it is an island that could not be solved through which they do.
  bool const is_every_way_known = judged.too_large.empty() && judged.too_large_regions.empty();
  std::vector<LongestTime> longest(own.size(), {std::nullopt, is_every_way_known});
  for (ProfileId profile = 0; profile < profiles; ++profile) {
    auto const onward = onward_of(plant, judged.passages, profile);
    for (auto inlet : last_first(onward)) {
      LongestTime rest;
      for (auto const& [next, ticks] : onward[inlet])
        rest = longer(rest, sum({ticks, true}, longest[next * profiles + profile]));
      longest[inlet * profiles + profile] = sum(own[inlet * profiles + profile], rest);
    }
  }
  return longest;
}

std::map<Change, LongestGuard> longest_guards(model::Design const& plant,
                                              WorksJudgement const& judged) {
  LongestGuards guards(plant.circuit, judged);
  for (std::uint32_t part = 0; part < judged.parts.size(); ++part) guards.take(part);
  return guards.longest();
}

}  // namespace leat::works
