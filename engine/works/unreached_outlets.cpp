#include "engine/works/unreached_outlets.hpp"

#include <algorithm>
#include <map>

#include "engine/model/joins.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;
using model::InletId;
using model::OutletId;

namespace {

// The outlets of which a part's own finding speaks: one in each copy.
std::vector<OutletId> in_copies(Islands const& islands, std::uint32_t part,
                                findings::Finding const& finding) {
  std::vector<OutletId> outlets;
  if (finding.kind != FindingKind::unreached_outlet || finding.outlets.empty()) return outlets;
  auto const& first = first_copy(islands, part).outlets;
  auto const own = std::find(first.begin(), first.end(), finding.outlets.front()) - first.begin();
  for (auto c : islands.parts[part].copies)
    outlets.push_back(islands.copies[c].outlets[static_cast<std::size_t>(own)]);
  return outlets;
}

// An outlet can have cells in several islands: what one of them says of it counts where no other
// knows better. Other such findings are left out.
using ByOutlet = std::map<OutletId, findings::Finding*>;
ByOutlet told_of_parts(std::vector<bool> const& is_reached, WorksJudgement& judged) {
  ByOutlet told;
  for (std::uint32_t part = 0; part < judged.parts.size(); ++part) {
    auto& own = judged.parts[part].findings;
    std::erase_if(own, [&](findings::Finding const& finding) {
      auto const outlets = in_copies(judged.islands, part, finding);
      return std::any_of(outlets.begin(), outlets.end(), [&](OutletId outlet) {
        return is_reached[outlet] || told.count(outlet) != 0;
      });
    });
    for (auto& finding : own) {
      for (auto outlet : in_copies(judged.islands, part, finding)) told.emplace(outlet, &finding);
    }
  }
  return told;
}

class Causes {
 public:
  Causes(model::Design const& plant, Passages const& passages, ByOutlet const& told,
         std::vector<bool> const& is_reached)
      : joins_(plant), ways_(plant.inlets.size()) {
    for (bool reached : is_reached) is_.push_back(reached ? Is::reached : Is::cause);
    for (InletId inlet = 0; inlet < ways_.size(); ++inlet)
      is_met_.push_back(joins_.is_entrance(inlet));
    for (auto const& join : plant.joins)
      if (is_reached[join.outlet]) is_met_[join.inlet] = true;
    for (InletId inlet = 0; inlet < is_met_.size(); ++inlet) {
      if (is_met_[inlet]) continue;
      ways_[inlet] = passages.outlets_from(inlet);
      for (auto outlet : ways_[inlet])
        if (!is_reached[outlet] && told.count(outlet) == 0) is_[outlet] = Is::behind;
    }
  }

  // Not reached, though bodies come to every inlet from which a way leads there.
  bool is_cause(OutletId outlet) const { return is_[outlet] == Is::cause; }
  // An outlet of the plant behind something that was not counted.
  bool is_left(OutletId outlet) const {
    return is_[outlet] == Is::behind && !joins_.is_joined(outlet);
  }

  // How many outlets of the plant lie behind it that were counted for no other.
  int count_behind(OutletId cause) {
    int count = 0;
    std::vector<OutletId> open{cause};
    while (!open.empty()) {
      auto const& join = joins_.from(open.back());
      open.pop_back();
      if (!join || is_met_[join->inlet]) continue;
      for (auto outlet : ways_[join->inlet]) {
        if (is_[outlet] != Is::behind) continue;
        is_[outlet] = Is::counted;
        count += joins_.is_joined(outlet) ? 0 : 1;
        open.push_back(outlet);
      }
    }
    return count;
  }

 private:
  enum class Is : std::uint8_t { reached, cause, behind, counted };
  model::Joins joins_;
  std::vector<Is> is_;                       // by outlet
  std::vector<bool> is_met_;                 // by inlet: bodies come there
  std::vector<std::vector<OutletId>> ways_;  // by inlet that is not met
};

std::vector<bool> seen_outlets(model::Design const& plant, Reached const& seen) {
  std::vector<bool> is_seen;
  for (OutletId outlet = 0; outlet < plant.outlets.size(); ++outlet)
    is_seen.push_back(seen.is_seen(outlet));
  return is_seen;
}

// By outlet, whether some way leads there.
std::vector<bool> outlets_of_ways(model::Design const& plant, WorksJudgement const& judged) {
  std::vector<bool> has_way(plant.outlets.size(), false);
  for (InletId inlet = 0; inlet < plant.inlets.size(); ++inlet)
    for (auto outlet : judged.passages.outlets_from(inlet)) has_way[outlet] = true;
  return has_way;
}

void add_all_reached(WorksJudgement const& judged, std::vector<bool>& is_reached) {
  auto& diagram = judged.conditions->diagram();
  for (auto const& [outlet, condition] : judged.passages.everything_reached()) {
    bool const can_be = diagram.both(condition, judged.conditions->reachable()) != Diagram::never;
    is_reached[outlet] = is_reached[outlet] || can_be;
  }
}

bool is_all(std::vector<bool> const& is_reached) {
  return std::find(is_reached.begin(), is_reached.end(), false) == is_reached.end();
}

// Bodies may be told for nothing to come somewhere by joins, through waters that do not come
// together. What an entrance leads to by itself is proved to be reached.
bool may_be_unreached(model::Design const& plant, std::vector<bool> const& is_reached,
                      WorksJudgement const& judged) {
  if (!judged.may_be_wider) return false;
  bool const is_of_wholes = std::none_of(judged.by_regions.begin(), judged.by_regions.end(),
                                         [](auto const& walk) { return walk.has_value(); });
  if (!is_of_wholes || !plant.circuit.nevers.empty()) return true;
  model::Joins const joins(plant);
  auto is_sure = is_reached;
  is_sure.flip();
  for (InletId inlet = 0; inlet < plant.inlets.size(); ++inlet) {
    if (!joins.is_entrance(inlet)) continue;
    for (auto outlet : judged.passages.outlets_from(inlet)) is_sure[outlet] = true;
  }
  return !is_all(is_sure);
}

void tell(model::Design const& plant, OutletId outlet, int behind, WorksJudgement& judged) {
  auto finding = findings::finding_of(FindingKind::unreached_outlet);
  finding.outlets.push_back(outlet);
  finding.cells = plant.outlets[outlet].cells;
  finding.measured = behind;
  judged.findings.push_back({std::move(finding), judged.conditions->reachable()});
}

}  // namespace

void unreached_outlets(model::Design const& plant, Reached const& seen, WorksJudgement& judged) {
  auto is_reached = seen_outlets(plant, seen);
  if (!is_all(is_reached)) {
    // What is not seen and has no way needs no conditions to be known.
    auto const has_way = outlets_of_ways(plant, judged);
    if (has_way != is_reached) add_all_reached(judged, is_reached);
    if (judged.conditions->diagram().has_run_out()) {
      told_of_parts(has_way, judged);
      judged.kinds_left_out.push_back(FindingKind::unreached_outlet);
      return;
    }
  }
  if (may_be_unreached(plant, is_reached, judged))
    judged.kinds_left_out.push_back(FindingKind::unreached_outlet);
  auto const told = told_of_parts(is_reached, judged);
  if (is_all(is_reached)) return;
  Causes causes(plant, judged.passages, told, is_reached);
  for (auto const& [outlet, finding] : told) finding->measured += causes.count_behind(outlet);
  for (OutletId outlet = 0; outlet < is_reached.size(); ++outlet) {
    if (!causes.is_cause(outlet) || told.count(outlet) != 0) continue;
    tell(plant, outlet, causes.count_behind(outlet), judged);
  }
  for (OutletId outlet = 0; outlet < is_reached.size(); ++outlet)
    if (causes.is_left(outlet)) tell(plant, outlet, 0, judged);
}

}  // namespace leat::works
