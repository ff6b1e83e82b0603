#include "engine/works/region_sights.hpp"

#include <algorithm>
#include <numeric>

#include "engine/findings/families.hpp"
#include "engine/works/region_walk.hpp"
#include "engine/works/region_waters.hpp"

namespace leat::works {

using findings::Descent;
using findings::Sighting;
using model::FindingKind;

namespace {

bool is_of_landing(FindingKind kind) {
  return kind == FindingKind::hard_landing || kind == FindingKind::thin_cushion ||
         kind == FindingKind::narrow_pit;
}

}  // namespace

bool RegionSights::hangs_on_the_way(findings::Finding const& finding) const {
  return std::any_of(finding.waters.begin(), finding.waters.end(), [&](std::uint32_t number) {
    return is_of_landing(finding.kind)
               ? comings[number].has_fallen
               : finding.kind == FindingKind::stacked_sources && !comings[number].enters;
  });
}

RegionSurvey::RegionSurvey(model::Design const& part, RegionWalk const& walk)
    : part_(part),
      walk_(walk),
      outlets_(body::outlet_cells(part)),
      beyond_(static_cast<model::OutletId>(part.outlets.size())),
      borders_(walk.regions.size() * part.profiles.size()),
      descents_(walk.spots.size()),
      is_entered_(walk.spots.size(), false) {
  find_borders();
  find_descents();
  find_head_runs();
}

void RegionSurvey::find_borders() {
  std::vector<bool> is_border(walk_.spots.size(), false);
  auto const border_of = [&](std::uint32_t spot) -> Border& {
    auto const& there = walk_.spots[spot];
    return borders_[there.region * part_.profiles.size() + there.profile];
  };
  auto const come_into = [&](std::uint32_t spot) {
    if (is_border[spot]) return;
    is_border[spot] = true;
    border_of(spot).spots.push_back(spot);
  };
  for (auto const& entry : walk_.entries) {
    is_entered_[entry.spot] = true;
    come_into(entry.spot);
  }
  for (std::uint32_t spot = 0; spot < walk_.spots.size(); ++spot) {
    for (auto const& branch : walk_.spots[spot].branches) {
      for (auto next : branch.next) {
        auto const& there = walk_.spots[next];
        if (there.region == walk_.spots[spot].region) continue;
        come_into(next);
        border_of(spot).ends.insert(there.at.feet);
      }
    }
  }
}

// Falls lead down, and cell ids grow with the level: so from the top.
void RegionSurvey::find_descents() {
  auto const& spots = walk_.spots;
  std::vector<std::uint32_t> order(spots.size());
  std::iota(order.begin(), order.end(), 0u);
  std::stable_sort(order.begin(), order.end(),
                   [&](auto a, auto b) { return spots[a].at.feet > spots[b].at.feet; });
  for (auto from : order) {
    auto const below = part_.grid.below(spots[from].at.feet);
    for (auto const& branch : spots[from].branches) {
      for (auto to : branch.falls_to) {
        bool const is_straight = spots[to].at.feet == below;
        auto const side = is_straight ? spots[from].at.carried_to : model::Side::none;
        if (descents_[from].cells + 1 > descents_[to].cells)
          descents_[to] = {descents_[from].cells + 1, side};
      }
    }
  }
}

// The longest way on which a head can stay in water, whatever the waters and whatever pushes: spots
// in the order of the steps, so that where they lead round some are left over.
void RegionSurvey::find_head_runs() {
  auto const& spots = walk_.spots;
  std::vector<bool> is_under(spots.size(), false);
  for (std::uint32_t spot = 0; spot < spots.size(); ++spot) {
    for (auto const& branch : spots[spot].branches)
      is_under[spot] = is_under[spot] || branch.is_under;
  }
  auto const for_each_step = [&](std::uint32_t from, auto visit) {
    for (auto const& branch : spots[from].branches)
      for (auto to : branch.next)
        if (is_under[from] && is_under[to]) visit(to);
  };
  std::vector<std::size_t> open_into(spots.size(), 0);
  for (std::uint32_t from = 0; from < spots.size(); ++from)
    for_each_step(from, [&](std::uint32_t to) { ++open_into[to]; });
  std::vector<std::uint32_t> ready;
  for (std::uint32_t spot = 0; spot < spots.size(); ++spot)
    if (open_into[spot] == 0) ready.push_back(spot);
  std::vector<int> length(spots.size(), 1);
  auto const most = part_.practice[model::Rule::head_run];
  for (std::size_t i = 0; i < ready.size(); ++i) {
    auto const from = ready[i];
    may_miss_head_runs_ = may_miss_head_runs_ || (is_under[from] && length[from] > most);
    for_each_step(from, [&](std::uint32_t to) {
      length[to] = std::max(length[to], length[from] + 1);
      if (--open_into[to] == 0) ready.push_back(to);
    });
  }
  may_miss_head_runs_ = may_miss_head_runs_ || ready.size() < spots.size();
}

// Where a body comes down in another region is looked at there.
bool RegionSurvey::lies_beyond(Border const& border, Sighting const& seen) const {
  return is_of_landing(seen.kind) && border.ends.count(seen.cells.front()) > 0;
}

void RegionSurvey::look(std::uint32_t region, model::ProfileId profile,
                        RegionWaters const& waters) {
  auto const& border = borders_[region * part_.profiles.size() + profile];
  auto const& frame = waters.frame(region);
  body::OutletCells own_ends;
  auto const end_at = [&](model::Cell c, model::OutletId outlet) {
    if (frame.holds(c)) own_ends.emplace(frame.own(c), outlet);
  };
  for (auto const& [c, outlet] : outlets_) end_at(c, outlet);
  for (auto c : border.ends) end_at(c, beyond_);
  waters.for_each_water(region, profile, [&](std::uint32_t water, RegionView const& view) {
    look(border, own_ends, water, profile, view);
  });
}

void RegionSurvey::look(Border const& border, body::OutletCells const& own_ends,
                        std::uint32_t water, model::ProfileId profile, RegionView const& view) {
  auto const& [here, frame] = view;
  for (auto spot : border.spots) {
    auto const at = frame.own(walk_.spots[spot].at);
    if (!here.fits(at.feet)) continue;
    auto const graph = body::route_graph(here, {at}, own_ends);
    auto const outcome = body::outcome_of(graph);
    auto before = descents_[spot];
    before.carried_to = frame.own(before.carried_to);
    findings::Passage const passage{
        here.moment().arrangement.design(), 0, here, graph, outcome, before};
    std::vector<Sighting> seen;
    for (auto family : findings::families_of_stretches) {
      for (auto& sighting : family(passage)) {
        for (auto& c : sighting.cells) c = frame.in_whole(c);
        std::sort(sighting.cells.begin(), sighting.cells.end());
        if (!lies_beyond(border, sighting)) seen.push_back(std::move(sighting));
      }
    }
    if (seen.empty()) continue;
    sightings_.add(static_cast<std::uint32_t>(comings_.size()), 0, profile, seen);
    comings_.push_back({spot, water, is_entered_[spot], descents_[spot].cells > 0});
  }
}

RegionSights RegionSurvey::sights() const {
  RegionSights sights{comings_, sightings_.gathered(part_.grid), may_miss_head_runs_};
  for (auto& finding : sights.findings) {
    finding.inlets.clear();
    finding.meetings.clear();
  }
  return sights;
}

}  // namespace leat::works
