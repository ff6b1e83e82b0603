#include "engine/works/journey.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <queue>
#include <set>

namespace leat::works {

using model::InletId;
using model::OutletId;

namespace {

class Ways {
 public:
  Ways(model::Design const& plant, InletId from, std::vector<Stretch> const& stretches)
      : from_(from), stretches_(stretches), join_of_(plant.outlets.size()) {
    for (auto const& join : plant.joins) join_of_[join.outlet] = join;
    for (std::size_t s = 0; s < stretches.size(); ++s) from_inlet_[stretches[s].inlet].push_back(s);
    follow();
  }

  std::vector<OutletId> ends() const {
    std::set<OutletId> found;
    for (auto inlet : met_) {
      for (auto s : leaving(inlet)) {
        if (!join_of_[stretches_[s].outlet]) found.insert(stretches_[s].outlet);
      }
    }
    return {found.begin(), found.end()};
  }

  Arrival to(OutletId outlet) const {
    Arrival arrival;
    arrival.outlet = outlet;
    arrival.quickest = quickest(outlet);
    auto const on_the_way = leading_to(outlet);
    arrival.longest = longest(outlet, on_the_way);
    for (auto inlet : on_the_way) {
      for (auto s : leaving(inlet)) {
        auto const& join = join_of_[stretches_[s].outlet];
        if (join && on_the_way.count(join->inlet) != 0 && !join->ticks) arrival.has_untold = true;
      }
    }
    return arrival;
  }

 private:
  std::vector<std::size_t> leaving(InletId inlet) const {
    auto const found = from_inlet_.find(inlet);
    return found == from_inlet_.end() ? std::vector<std::size_t>{} : found->second;
  }

  void follow() {
    std::vector<InletId> open{from_};
    met_.insert(from_);
    while (!open.empty()) {
      auto const inlet = open.back();
      open.pop_back();
      for (auto s : leaving(inlet)) {
        auto const& join = join_of_[stretches_[s].outlet];
        if (join && met_.insert(join->inlet).second) open.push_back(join->inlet);
      }
    }
  }

  std::optional<Ticks> quickest(OutletId outlet) const {
    using Open = std::pair<Ticks, InletId>;
    std::priority_queue<Open, std::vector<Open>, std::greater<>> open;
    std::set<InletId> done;
    std::optional<Ticks> best;
    open.push({0, from_});
    while (!open.empty()) {
      auto const [ticks, inlet] = open.top();
      open.pop();
      if (!done.insert(inlet).second) continue;
      for (auto s : leaving(inlet)) {
        auto const& stretch = stretches_[s];
        if (!stretch.quickest) continue;
        auto const after = ticks + *stretch.quickest;
        if (stretch.outlet == outlet) best = std::min(best.value_or(after), after);
        if (auto const& join = join_of_[stretch.outlet])
          open.push({after + join->ticks.value_or(0), join->inlet});
      }
    }
    return best;
  }

  // The inlets met from which the outlet can be reached.
  std::set<InletId> leading_to(OutletId outlet) const {
    std::set<InletId> leading;
    for (bool is_new = true; is_new;) {
      is_new = false;
      for (auto inlet : met_) {
        for (auto s : leaving(inlet)) {
          auto const& join = join_of_[stretches_[s].outlet];
          bool const leads =
              stretches_[s].outlet == outlet || (join && leading.count(join->inlet) != 0);
          if (leads && leading.insert(inlet).second) is_new = true;
        }
      }
    }
    return leading;
  }

  std::optional<Ticks> longest(OutletId outlet, std::set<InletId> const& part) const {
    std::map<InletId, std::size_t> open_into;
    for (auto inlet : part) {
      for (auto next : next_within(inlet, part)) ++open_into[next];
    }
    std::vector<InletId> ready;
    for (auto inlet : part) {
      if (open_into[inlet] == 0) ready.push_back(inlet);
    }
    std::map<InletId, Ticks> latest;
    std::optional<Ticks> found;
    std::size_t left = part.size();
    for (; !ready.empty(); --left) {
      auto const inlet = ready.back();
      ready.pop_back();
      for (auto s : leaving(inlet)) {
        auto const& stretch = stretches_[s];
        auto const& join = join_of_[stretch.outlet];
        bool const goes_on = join && part.count(join->inlet) != 0;
        if (!goes_on && stretch.outlet != outlet) continue;
        if (!stretch.longest) return std::nullopt;
        auto const after = latest[inlet] + *stretch.longest;
        if (!goes_on) {
          found = std::max(found.value_or(0), after);
          continue;
        }
        auto& next = latest[join->inlet];
        next = std::max(next, after + join->ticks.value_or(0));
        if (--open_into[join->inlet] == 0) ready.push_back(join->inlet);
      }
    }
    return left == 0 ? found : std::nullopt;
  }

  std::vector<InletId> next_within(InletId inlet, std::set<InletId> const& part) const {
    std::vector<InletId> next;
    for (auto s : leaving(inlet)) {
      auto const& join = join_of_[stretches_[s].outlet];
      if (join && part.count(join->inlet) != 0) next.push_back(join->inlet);
    }
    return next;
  }

  InletId from_;
  std::vector<Stretch> const& stretches_;
  std::vector<std::optional<model::Join>> join_of_;
  std::map<InletId, std::vector<std::size_t>> from_inlet_;
  std::set<InletId> met_;  // those to which ways lead
};

}  // namespace

std::vector<Arrival> arrivals(model::Design const& plant, InletId from,
                              std::vector<Stretch> const& stretches) {
  Ways const ways(plant, from, stretches);
  std::vector<Arrival> found;
  for (auto outlet : ways.ends()) found.push_back(ways.to(outlet));
  return found;
}

}  // namespace leat::works
