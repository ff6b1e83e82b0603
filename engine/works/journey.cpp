#include "engine/works/journey.hpp"

#include <algorithm>
#include <functional>
#include <queue>
#include <set>

#include "engine/model/joins.hpp"

namespace leat::works {

using model::InletId;
using model::OutletId;

namespace {

class Ways {
 public:
  Ways(model::Design const& plant, InletId from, std::vector<Stretch> const& stretches)
      : from_(from),
        stretches_(stretches),
        joins_(plant),
        leaving_(plant.inlets.size()),
        before_(plant.inlets.size()),
        is_met_(plant.inlets.size(), false) {
    for (std::size_t s = 0; s < stretches.size(); ++s) {
      leaving_[stretches[s].inlet].push_back(s);
      if (auto const& join = joins_.from(stretches[s].outlet))
        before_[join->inlet].push_back(stretches[s].inlet);
    }
    follow();
  }

  std::vector<OutletId> ends() const {
    std::set<OutletId> found;
    for (auto inlet : met_) {
      for (auto s : leaving_[inlet]) {
        if (!joins_.is_joined(stretches_[s].outlet)) found.insert(stretches_[s].outlet);
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
    for (auto inlet : on_the_way.inlets) {
      for (auto s : leaving_[inlet]) {
        auto const& join = joins_.from(stretches_[s].outlet);
        if (join && on_the_way.is_in[join->inlet] && !join->ticks) arrival.has_untold = true;
      }
    }
    return arrival;
  }

 private:
  // Some of the inlets that are met.
  struct Section {
    std::vector<InletId> inlets;
    std::vector<bool> is_in;  // by inlet
  };

  void follow() {
    met_.push_back(from_);
    is_met_[from_] = true;
    for (std::size_t i = 0; i < met_.size(); ++i) {
      for (auto s : leaving_[met_[i]]) {
        auto const& join = joins_.from(stretches_[s].outlet);
        if (!join || is_met_[join->inlet]) continue;
        is_met_[join->inlet] = true;
        met_.push_back(join->inlet);
      }
    }
  }

  std::optional<Ticks> quickest(OutletId outlet) const {
    using Open = std::pair<Ticks, InletId>;
    std::priority_queue<Open, std::vector<Open>, std::greater<>> open;
    std::vector<bool> is_done(is_met_.size(), false);
    std::optional<Ticks> best;
    open.push({0, from_});
    while (!open.empty()) {
      auto const [ticks, inlet] = open.top();
      open.pop();
      if (is_done[inlet]) continue;
      is_done[inlet] = true;
      for (auto s : leaving_[inlet]) {
        auto const& stretch = stretches_[s];
        if (!stretch.quickest) continue;
        auto const after = ticks + *stretch.quickest;
        if (stretch.outlet == outlet) best = std::min(best.value_or(after), after);
        if (auto const& join = joins_.from(stretch.outlet))
          open.push({after + join->ticks.value_or(0), join->inlet});
      }
    }
    return best;
  }

  // The inlets met from which the outlet can be reached: back from those whose island it is of.
  Section leading_to(OutletId outlet) const {
    Section section{{}, std::vector<bool>(is_met_.size(), false)};
    auto const add = [&](InletId inlet) {
      if (!is_met_[inlet] || section.is_in[inlet]) return;
      section.is_in[inlet] = true;
      section.inlets.push_back(inlet);
    };
    for (auto const& stretch : stretches_)
      if (stretch.outlet == outlet) add(stretch.inlet);
    for (std::size_t i = 0; i < section.inlets.size(); ++i)
      for (auto inlet : before_[section.inlets[i]]) add(inlet);
    return section;
  }

  std::optional<Ticks> longest(OutletId outlet, Section const& section) const {
    std::vector<std::size_t> open_into(is_met_.size(), 0);
    for (auto inlet : section.inlets) {
      for (auto before : before_[inlet]) open_into[inlet] += section.is_in[before] ? 1u : 0u;
    }
    std::vector<InletId> ready;
    for (auto inlet : section.inlets) {
      if (open_into[inlet] == 0) ready.push_back(inlet);
    }
    std::vector<Ticks> latest(is_met_.size(), 0);
    std::optional<Ticks> found;
    std::size_t left = section.inlets.size();
    for (; !ready.empty(); --left) {
      auto const inlet = ready.back();
      ready.pop_back();
      for (auto s : leaving_[inlet]) {
        auto const& stretch = stretches_[s];
        auto const& join = joins_.from(stretch.outlet);
        bool const goes_on = join && section.is_in[join->inlet];
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

  InletId from_;
  std::vector<Stretch> const& stretches_;
  model::Joins joins_;
  std::vector<std::vector<std::size_t>> leaving_;  // by inlet, stretches
  std::vector<std::vector<InletId>> before_;       // by inlet, those from which joins lead there
  std::vector<InletId> met_;                       // those to which ways lead
  std::vector<bool> is_met_;
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
