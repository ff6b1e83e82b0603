#include "engine/works/region_findings.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "engine/works/claims.hpp"
#include "engine/works/frame.hpp"
#include "engine/works/lever_flips.hpp"
#include "engine/works/showing.hpp"
#include "engine/works/spot_network.hpp"

namespace leat::works {

using findings::Finding;
using logic::Diagram;
using model::FindingKind;
using model::InletId;
using model::ProfileId;

namespace {

// In one copy of a part.
class CopyFindings {
 public:
  CopyFindings(model::Design const& plant, Copy const& copy, RegionWalk const& walk,
               WorksJudgement& judged)
      : plant_(plant),
        copy_(copy),
        part_(judged.islands.parts[copy.part].design),
        frame_(copy, part_.grid, plant.grid),
        walk_(walk),
        judged_(judged),
        diagram_(judged.conditions->diagram()),
        is_shared_(inlets_in_several(judged.islands, plant.inlets.size())),
        network_(copy, part_, walk, *judged.conditions) {
    for (auto variable : judged.conditions->variables())
      as_built_.push_back(plant.circuit.signals[variable].starts_on);
    for (InletId inlet = 0; inlet < part_.inlets.size(); ++inlet) {
      for (ProfileId profile = 0; profile < part_.profiles.size(); ++profile) {
        auto const arriving =
            judged.arrivals.at(copy.inlets[inlet], profile, judged.passages, diagram_);
        arriving_.push_back(diagram_.both(arriving, judged.conditions->reachable()));
        coming_.push_back(network_.coming(arriving_.size() - 1));
      }
    }
  }

  void find() {
    for (auto const& finding : walk_.sights.findings) tell_sight(finding);
    for (std::size_t entrance = 0; entrance < arriving_.size(); ++entrance) {
      tell_split(entrance);
      if (!is_shared_[copy_.inlets[inlet_of(entrance)]])
        tell(at_inlet(FindingKind::tight_inlet, entrance),
             met(entrance, network_.passage(entrance).barred));
    }
    grade_memory();
    if (!network_.has_cycles()) return;
    if (judged_.may_miss_traps || (judged_.may_be_wider && may_be_trapped()))
      judged_.kinds_left_out.push_back(FindingKind::endless_loop);
    else if (!judged_.may_be_wider)
      tell_loops();
  }

 private:
  InletId inlet_of(std::size_t entrance) const {
    return static_cast<InletId>(entrance / part_.profiles.size());
  }
  ProfileId profile_of(std::size_t entrance) const {
    return static_cast<ProfileId>(entrance % part_.profiles.size());
  }
  // Who goes round a closed loop is trapped, and routes that are told wider hide no trap.
  bool may_be_trapped() {
    bool is_found = false;
    for (std::size_t entrance = 0; entrance < arriving_.size(); ++entrance)
      is_found = is_found || met(entrance, network_.passage(entrance).trapped) != Diagram::never;
    return is_found;
  }

  // While bodies that come to the entrance meet it, as the network tells.
  Function met(std::size_t entrance, Function condition) {
    return diagram_.both(arriving_[entrance], network_.possible(condition));
  }

  // By coming, then entrance: when it comes about.
  std::vector<Function> const& coming_about(std::uint32_t number) {
    auto const [entry, is_new] = coming_about_.try_emplace(number);
    if (!is_new) return entry->second;
    auto const& coming = walk_.sights.comings[number];
    auto const during = network_.during(walk_.spots[coming.spot].region, coming.water);
    for (std::size_t entrance = 0; entrance < arriving_.size(); ++entrance)
      entry->second.push_back(met(entrance, diagram_.both(coming_[entrance][coming.spot], during)));
    return entry->second;
  }

  bool is_fresh(Coming const& coming) const {
    auto const& region = walk_.regions[walk_.spots[coming.spot].region];
    return region.judged.histories.waters[coming.water].is_fresh;
  }

  void tell_sight(Finding const& sight) {
    auto finding = sight;
    finding.waters.clear();
    finding.profiles.clear();
    for (auto& c : finding.cells) c = frame_.in_whole(c);
    std::sort(finding.cells.begin(), finding.cells.end());
    auto shows = Diagram::never, in_fresh = Diagram::never;
    for (auto number : sight.waters) {
      auto const& about = coming_about(number);
      for (std::size_t entrance = 0; entrance < about.size(); ++entrance) {
        if (about[entrance] == Diagram::never) continue;
        shows = diagram_.either(shows, about[entrance]);
        if (is_fresh(walk_.sights.comings[number]))
          in_fresh = diagram_.either(in_fresh, about[entrance]);
        findings::insert_sorted(finding.inlets, copy_.inlets[inlet_of(entrance)]);
        findings::insert_sorted(finding.profiles, profile_of(entrance));
      }
    }
    tell(std::move(finding), shows, in_fresh,
         are_sights_proved_ && !walk_.sights.hangs_on_the_way(sight));
  }

  // Water that remembers is a warning where bodies that come there go unlike ways by it.
  void grade_memory() {
    auto& regions = judged_.by_regions[copy_.part]->regions;
    for (std::uint32_t r = 0; r < regions.size(); ++r) {
      auto const differing = differing_by(r);
      for (auto& finding : regions[r].judged.findings) {
        if (finding.kind != FindingKind::remembering_water) continue;
        Piece const piece{&regions[r].judged, copy_.part, r};
        auto const shows = showing(judged_, piece, copy_, occasion_of(finding));
        if (diagram_.both(shows, differing) != Diagram::never)
          finding.severity = model::Severity::warning;
      }
    }
  }
  Function differing_by(std::uint32_t region) {
    auto differing = Diagram::never;
    for (std::size_t entrance = 0; entrance < arriving_.size(); ++entrance)
      differing = diagram_.either(
          differing, diagram_.both(arriving_[entrance], network_.parting(entrance, region)));
    return differing;
  }

  Finding at_inlet(FindingKind kind, std::size_t entrance) const {
    auto finding = findings::finding_of(kind);
    finding.inlets = {copy_.inlets[inlet_of(entrance)]};
    finding.profiles = {profile_of(entrance)};
    finding.cells = plant_.inlets[finding.inlets.front()].cells;
    return finding;
  }

  void tell_split(std::size_t entrance) {
    auto const& passage = network_.passage(entrance);
    auto const splitting = diagram_.both(works::splitting(passage, diagram_), !passage.unknown);
    if (splitting == Diagram::never) return;
    auto finding = at_inlet(FindingKind::split_route, entrance);
    for (auto const& end : passage.ends) {
      if (met(entrance, diagram_.both(splitting, end.condition)) != Diagram::never)
        findings::insert_sorted(finding.outlets, network_.outlet(end));
    }
    tell(std::move(finding), met(entrance, splitting));
  }

  // Cells on closed loops, those together that are so in the same combinations.
  void tell_loops() {
    std::map<std::tuple<ProfileId, std::uint32_t, std::vector<InletId>>, std::vector<model::Cell>>
        loops;
    std::vector<bool> is_met(walk_.spots.size(), false);
    for (auto const& coming : coming_) {
      for (std::size_t spot = 0; spot < is_met.size(); ++spot)
        if (coming[spot] != Diagram::never) is_met[spot] = true;
    }
    auto const closing = network_.on_closed_loops(is_met);
    for (std::uint32_t spot = 0; spot < walk_.spots.size(); ++spot) {
      auto const& [at, profile, region, branches] = walk_.spots[spot];
      if (closing[spot] == Diagram::never) continue;
      auto shows = Diagram::never;
      std::vector<InletId> inlets;
      for (InletId inlet = 0; inlet < part_.inlets.size(); ++inlet) {
        auto const entrance = inlet * part_.profiles.size() + profile;
        auto const there = met(entrance, diagram_.both(coming_[entrance][spot], closing[spot]));
        if (there == Diagram::never) continue;
        shows = diagram_.either(shows, there);
        findings::insert_sorted(inlets, copy_.inlets[inlet]);
      }
      if (shows == Diagram::never) continue;
      findings::insert_sorted(loops[{profile, shows.edge, inlets}], frame_.in_whole(at.feet));
    }
    for (auto& [alike, cells] : loops) {
      auto finding = findings::finding_of(FindingKind::endless_loop);
      auto const& [profile, shows, inlets] = alike;
      finding.cells = std::move(cells);
      finding.inlets = inlets;
      finding.profiles = {profile};
      tell(std::move(finding), Function{shows});
    }
  }

  // Regions that remember choose their waters for themselves, and so do islands: then it may be
  // told for nothing.
  bool are_sights_proved() const {
    auto const remembering = walk_.remembering_sights();
    bool const is_alone = judged_.islands.copies.size() == 1 && plant_.circuit.nevers.empty() &&
                          !judged_.conditions->has_memory();
    return !judged_.may_be_wider && (remembering == 0 || (remembering == 1 && is_alone));
  }

  void tell(Finding finding, Function shows, Function in_fresh, bool is_proved) {
    if (shows == Diagram::never || diagram_.has_run_out()) return;
    if (auto const instance = nearest(diagram_, in_fresh, as_built_)) {
      if (auto flips = flips_to(plant_.circuit, *judged_.conditions, *instance)) {
        finding.examples.emplace_back();
        finding.examples.back().flips = std::move(*flips);
      }
    }
    judged_.findings.push_back({std::move(finding), shows, is_proved, true});
  }
  void tell(Finding finding, Function shows) {
    tell(std::move(finding), shows, judged_.may_be_wider ? Diagram::never : shows,
         !judged_.may_be_wider);
  }

  model::Design const& plant_;
  Copy const& copy_;
  model::Design const& part_;
  Frame frame_;
  RegionWalk const& walk_;
  WorksJudgement& judged_;
  Diagram& diagram_;
  std::vector<bool> is_shared_;  // by inlet of the plant: told for all its islands together
  SpotNetwork network_;
  Instance as_built_;
  bool const are_sights_proved_ = are_sights_proved();
  std::vector<Function> arriving_;             // by entrance
  std::vector<std::vector<Function>> coming_;  // by entrance, then spot
  std::map<std::uint32_t, std::vector<Function>> coming_about_;
};

}  // namespace

void region_findings(model::Design const& plant, WorksJudgement& judged) {
  for (auto const& copy : judged.islands.copies) {
    auto const& walk = judged.by_regions[copy.part];
    if (!walk) continue;
    if (walk->sights.may_miss_head_runs)
      judged.kinds_left_out.push_back(FindingKind::long_head_run);
    if (walk->may_miss_pools || walk->may_miss_waters)
      judged.kinds_left_out.push_back(FindingKind::swimmer_pool);
    if (walk->may_miss_sources || walk->may_miss_waters)
      judged.kinds_left_out.push_back(FindingKind::formed_source);
    if (walk->may_miss_waters) judged.kinds_left_out.push_back(FindingKind::water_spill);
    CopyFindings(plant, copy, *walk, judged).find();
  }
}

}  // namespace leat::works
