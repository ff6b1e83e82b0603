#include "engine/works/longest_times.hpp"

#include <algorithm>

#include "engine/model/joins.hpp"

namespace leat::works {

using model::InletId;
using model::ProfileId;
using Ticks = std::optional<int>;

namespace {

Ticks sum(Ticks a, Ticks b) { return a && b ? std::optional(*a + *b) : std::nullopt; }

// By inlet, then profile: the longest trip up to where its islands end.
std::vector<Ticks> trips_of_islands(model::Design const& plant, WorksJudgement const& judged) {
  auto const profiles = plant.profiles.size();
  std::vector<Ticks> trips(plant.inlets.size() * profiles, 0);
  for (auto const& copy : judged.islands.copies) {
    auto const& part = judged.parts[copy.part];
    for (std::size_t own = 0; own < copy.inlets.size(); ++own) {
      for (ProfileId profile = 0; profile < profiles; ++profile) {
        auto& trip = trips[copy.inlets[own] * profiles + profile];
        if (!part.is_decided || !part.histories.is_followed) trip.reset();
        for (auto const& of_water : part.trips)
          trip = explore::longer(trip, of_water[own * profiles + profile]);
      }
    }
  }
  return trips;
}

// Where bodies go on from an inlet, and after how long.
struct Onward {
  InletId inlet = 0;
  int ticks = 0;
};
std::vector<std::vector<Onward>> onward_of(model::Design const& plant, Passages const& passages) {
  model::Joins const joins(plant);
  std::vector<std::vector<Onward>> onward(plant.inlets.size());
  for (InletId inlet = 0; inlet < onward.size(); ++inlet) {
    for (auto outlet : passages.outlets_from(inlet)) {
      if (auto const& join = joins.from(outlet))
        onward[inlet].push_back({join->inlet, join->ticks.value_or(0)});
    }
  }
  return onward;
}

// Each inlet after those that it leads to; those from which joins lead round are missing.
std::vector<InletId> last_first(std::vector<std::vector<Onward>> const& onward) {
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

}  // namespace

std::vector<Ticks> longest_trips(model::Design const& plant, WorksJudgement const& judged) {
  auto const profiles = plant.profiles.size();
  auto const own = trips_of_islands(plant, judged);
  auto const onward = onward_of(plant, judged.passages);
  std::vector<Ticks> longest(own.size());
  for (auto inlet : last_first(onward)) {
    for (ProfileId profile = 0; profile < profiles; ++profile) {
      Ticks rest = 0;
      for (auto const& next : onward[inlet])
        rest = explore::longer(rest, sum(next.ticks, longest[next.inlet * profiles + profile]));
      longest[inlet * profiles + profile] = sum(own[inlet * profiles + profile], rest);
    }
  }
  return longest;
}

std::map<GuardedChange, LongestGuard> longest_guards(WorksJudgement const& judged) {
  std::map<GuardedChange, LongestGuard> longest;
  for (std::uint32_t p = 0; p < judged.parts.size(); ++p) {
    auto const& part = judged.parts[p];
    if (!part.is_decided || !part.switchings.is_complete) continue;
    auto const& first = first_copy(judged.islands, p).signals;
    for (auto const& guard : part.guards) {
      auto const own = std::find(first.begin(), first.end(), guard.event) - first.begin();
      for (auto c : judged.islands.parts[p].copies) {
        auto const event = judged.islands.copies[c].signals[static_cast<std::size_t>(own)];
        auto& most = longest[{event, guard.goes_on}];
        most.wait = explore::longer(most.wait, guard.wait);
        most.clearing = explore::longer(most.clearing, guard.clearing);
      }
    }
  }
  return longest;
}

}  // namespace leat::works
