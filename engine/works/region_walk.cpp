#include "engine/works/region_walk.hpp"

#include <algorithm>
#include <map>
#include <unordered_map>

#include "engine/body/route_graph.hpp"
#include "engine/works/region_waters.hpp"

namespace leat::works {

using body::Position;
using model::Cell;

namespace {

class Walk {
 public:
  Walk(model::Design const& design, Supports const& supports, AsBuilt& as_built,
       Budget const& budget, Progress const& progress)
      : design_(design),
        supports_(supports),
        waters_(design, supports, as_built, budget, progress),
        outlets_(body::outlet_cells(design)) {
    for (auto const& region : regions_of(design, supports)) {
      auto const number = static_cast<std::uint32_t>(found_.regions.size());
      for (model::ProfileId p = 0; p < region.feet.size(); ++p) {
        for (auto feet : region.feet[p]) region_of_.emplace(key(feet, p), number);
      }
      found_.regions.push_back(waters_.judge(region));
    }
  }

  RegionWalk run() {
    for (model::InletId inlet = 0; inlet < design_.inlets.size(); ++inlet) {
      for (model::ProfileId p = 0; p < design_.profiles.size(); ++p) {
        for (auto c : design_.inlets[inlet].cells) enter(inlet, p, c);
      }
    }
    for (std::uint32_t spot = 0; spot < found_.spots.size(); ++spot) leave(spot);
    look();
    for (std::uint32_t r = 0; r < found_.regions.size(); ++r) {
      judge_water(r);
      tell_alike(r);
    }
    return std::move(found_);
  }

 private:
  static std::uint64_t key(Cell feet, model::ProfileId profile) {
    return std::uint64_t{profile} << 32 | feet;
  }

  // A cell in no region is one where the body never fits.
  void enter(model::InletId inlet, model::ProfileId profile, Cell c) {
    auto const home = region_of_.find(key(c, profile));
    if (home == region_of_.end()) return;
    Entry entry{inlet, profile, home->second, {}, 0};
    if (met(entry.region).is_solved) {
      waters_.for_each_water(entry.region, profile,
                             [&](std::uint32_t water, RegionView const& view) {
                               if (view.here.fits(view.frame.own(c))) entry.waters.push_back(water);
                             });
      if (entry.waters.empty()) return;
    }
    entry.spot = number({c, model::Side::none, 0}, profile);
    found_.entries.push_back(std::move(entry));
  }

  std::uint32_t number(Position at, model::ProfileId profile) {
    auto const tag = std::uint64_t{profile} << 40 | std::uint64_t{at.feet} << 8 |
                     static_cast<std::uint64_t>(at.carried_to) << 4 | at.fallen;
    auto const next = static_cast<std::uint32_t>(found_.spots.size());
    auto const [entry, is_new] = numbers_.try_emplace(tag, next);
    if (is_new) found_.spots.push_back({at, profile, region_of_.at(key(at.feet, profile)), {}});
    return entry->second;
  }

  SolvedRegion& met(std::uint32_t number) {
    found_.regions[number].is_met = true;
    return found_.regions[number];
  }

  // What its water tells of the cells that are its own; of a restless one, of all that it knows.
  void judge_water(std::uint32_t number) {
    auto& region = found_.regions[number];
    found_.may_miss_waters =
        found_.may_miss_waters || (!region.is_solved && !region.region.wet.empty());
    auto const& signals = region.region.signals;
    auto const& own = region.region.wet;
    std::erase_if(region.judged.findings, [&](findings::Finding& finding) {
      auto const is_known = [&](Cell c) { return includes(signals, supports_.of_surroundings(c)); };
      auto const is_own = [&](Cell c) { return std::binary_search(own.begin(), own.end(), c); };
      auto& cells = finding.cells;
      // Whether ways hang on it is seen over all regions.
      if (finding.kind == model::FindingKind::remembering_water)
        finding.severity = model::Severity::note;
      if (cells.empty()) return false;
      if (finding.kind == model::FindingKind::formed_source) {
        found_.may_miss_sources = true;
        return true;
      }
      if (finding.kind == model::FindingKind::swimmer_pool) {
        bool const is_whole = std::all_of(cells.begin(), cells.end(), is_known);
        found_.may_miss_pools = found_.may_miss_pools || !is_whole;
        return !is_whole;
      }
      bool const is_restless = finding.kind == model::FindingKind::restless_water;
      std::erase_if(cells, [&](Cell c) { return is_restless ? !is_known(c) : !is_own(c); });
      return cells.empty();
    });
  }

  void leave(std::uint32_t spot) {
    auto const at = found_.spots[spot].at;
    auto const profile = found_.spots[spot].profile;
    auto const number = found_.spots[spot].region;
    if (!met(number).is_solved) return;
    std::vector<Branch> branches;
    waters_.for_each_water(number, profile, [&](std::uint32_t water, RegionView const& view) {
      auto branch = branch_at(view, at, profile);
      auto const same = std::find_if(branches.begin(), branches.end(), [&](Branch const& known) {
        return known.next == branch.next && known.outlets == branch.outlets &&
               known.falls_to == branch.falls_to && known.spills == branch.spills &&
               known.is_unsure == branch.is_unsure;
      });
      if (same != branches.end()) {
        same->waters.push_back(water);
        same->is_under = same->is_under || branch.is_under;
      } else {
        branch.waters.push_back(water);
        branches.push_back(std::move(branch));
      }
    });
    found_.spots[spot].branches = std::move(branches);
  }

  Branch branch_at(RegionView const& view, Position at, model::ProfileId profile) {
    Branch branch;
    if (auto const outlet = outlets_.find(at.feet); outlet != outlets_.end()) {
      branch.outlets.push_back(outlet->second);
      return branch;
    }
    auto const& [here, frame] = view;
    auto const own = frame.own(at);
    auto const moves = body::moves_from(here, own);
    bool const is_in_air = !here.is_wet(own.feet);
    auto const head = here.profile().height - 1;
    branch.is_under = head > 0 && here.are_feet_wet(here.grid().raised(own.feet, head));
    branch.is_unsure = !moves.empty();
    for (auto const& move : moves) {
      if (move.is_sure) branch.is_unsure = false;
      auto const to = frame.in_whole(move.to);
      auto const outlet = outlets_.find(to.feet);
      if (!design_.grid.is_inside(to.feet)) {
        branch.spills = true;
      } else if (outlet != outlets_.end()) {
        branch.outlets.push_back(outlet->second);
      } else {
        branch.next.push_back(number(to, profile));
        bool const falls = is_in_air && move.rule != body::MoveRule::sink;
        if (falls) branch.falls_to.push_back(branch.next.back());
      }
    }
    for (auto* list : {&branch.next, &branch.falls_to, &branch.outlets}) {
      std::sort(list->begin(), list->end());
      list->erase(std::unique(list->begin(), list->end()), list->end());
    }
    return branch;
  }

  void look() {
    RegionSurvey survey(design_, found_);
    for (std::uint32_t r = 0; r < found_.regions.size(); ++r) {
      for (model::ProfileId p = 0; found_.regions[r].is_solved && p < design_.profiles.size(); ++p)
        survey.look(r, p, waters_);
    }
    found_.sights = survey.sights();
  }

  void tell_alike(std::uint32_t region) {
    auto const count = found_.regions[region].judged.histories.waters.size();
    std::vector<std::vector<std::uint32_t>> seen(count);
    for (auto const& spot : found_.spots) {
      if (spot.region != region) continue;
      for (std::uint32_t b = 0; b < spot.branches.size(); ++b) {
        for (auto water : spot.branches[b].waters) seen[water].push_back(b);
      }
    }
    for (auto const& entry : found_.entries) {
      if (entry.region != region) continue;
      for (std::uint32_t w = 0; w < count; ++w)
        seen[w].push_back(std::binary_search(entry.waters.begin(), entry.waters.end(), w) ? 1 : 0);
    }
    found_.likeness_of_routes.push_back(numbered(seen));
    for (std::uint32_t f = 0; f < found_.sights.findings.size(); ++f) {
      for (auto number : found_.sights.findings[f].waters) {
        auto const& coming = found_.sights.comings[number];
        if (found_.spots[coming.spot].region == region) seen[coming.water].push_back(f);
      }
    }
    found_.likeness.push_back(numbered(seen));
  }

  static std::vector<std::uint32_t> numbered(std::vector<std::vector<std::uint32_t>> const& seen) {
    std::map<std::vector<std::uint32_t>, std::uint32_t> numbers;
    std::vector<std::uint32_t> alike;
    for (auto const& own : seen)
      alike.push_back(
          numbers.try_emplace(own, static_cast<std::uint32_t>(numbers.size())).first->second);
    return alike;
  }

  model::Design const& design_;
  Supports const& supports_;
  RegionWaters waters_;
  body::OutletCells outlets_;
  RegionWalk found_;
  std::unordered_map<std::uint64_t, std::uint32_t> region_of_, numbers_;
};

}  // namespace

std::size_t RegionWalk::remembering_by(
    std::vector<std::vector<std::uint32_t>> const& likeness_by) const {
  std::size_t count = 0;
  for (std::size_t r = 0; r < regions.size(); ++r) {
    auto const& situations = regions[r].judged.combinations.situations;
    bool const is_remembering =
        std::any_of(situations.begin(), situations.end(), [&](auto const& waters) {
          auto const& alike = likeness_by[r];
          return std::any_of(waters.begin(), waters.end(), [&](std::uint32_t water) {
            return alike[water] != alike[waters.front()];
          });
        });
    count += is_remembering ? 1u : 0u;
  }
  return count;
}

std::optional<RegionWalk> walk_regions(model::Design const& design, Budget const& of_region,
                                       Progress const& progress) {
  AsBuilt as_built(design);
  if (!as_built.is_known()) return std::nullopt;
  Supports const supports(design);
  return Walk(design, supports, as_built, of_region, progress).run();
}

}  // namespace leat::works
