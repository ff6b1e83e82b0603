#include "engine/works/in_plant.hpp"

#include <algorithm>
#include <set>
#include <tuple>

#include "engine/works/frame.hpp"
#include "engine/works/lever_flips.hpp"

namespace leat::works {

using model::FindingKind;

namespace {

bool is_of_the_whole(FindingKind kind) {
  switch (kind) {
    case FindingKind::idle_signal:
    case FindingKind::twin_signals:
    case FindingKind::no_return:
    case FindingKind::unreached_state:
    case FindingKind::stale_acceptance:
      return true;
    default:
      return false;
  }
}

class Telling {
 public:
  Telling(model::Design const& plant, model::Design const& part, Copy const& copy,
          Conditions& conditions)
      : plant_(plant), copy_(copy), conditions_(conditions), frame_(copy, part.grid, plant.grid) {}

  void tell(Judgement& judgement) const {
    put(judgement.variables, copy_.signals);
    put(judgement.combinations.variables, copy_.signals);
    std::erase_if(judgement.findings,
                  [](auto const& finding) { return is_of_the_whole(finding.kind); });
    for (auto& finding : judgement.findings) tell(finding);
    for (auto& guard : judgement.guards) tell(guard);
  }

 private:
  template <class Id>
  static void put(std::vector<Id>& ids, std::vector<Id> const& in_plant) {
    for (auto& id : ids) id = in_plant[id];
  }
  template <class Id>
  static void put_sorted(std::vector<Id>& ids, std::vector<Id> const& in_plant) {
    put(ids, in_plant);
    std::sort(ids.begin(), ids.end());
  }

  void tell(findings::Finding& finding) const {
    for (auto& c : finding.cells) c = frame_.in_whole(c);
    put_sorted(finding.inlets, copy_.inlets);
    for (auto& meeting : finding.meetings) meeting.inlet = copy_.inlets[meeting.inlet];
    put_sorted(finding.outlets, copy_.outlets);
    put(finding.signals, copy_.signals);
    if (finding.event) finding.event = copy_.signals[*finding.event];
    for (auto& example : finding.examples) tell(example, finding.event);
    if (finding.accepted_by) finding.accepted_by = copy_.acceptances[*finding.accepted_by];
  }

  void tell(explore::Guard& guard) const {
    guard.event = copy_.signals[guard.event];
    tell(guard.example, guard.event);
    for (auto& [danger, rows, example] : guard.threats) {
      danger.inlet = copy_.inlets[danger.inlet];
      if (danger.outlet) danger.outlet = copy_.outlets[*danger.outlet];
      for (auto& c : danger.cells) c = frame_.in_whole(c);
      tell(example, guard.event);
    }
  }

  // Of a wire there is no single flip: those that make it change come with the others.
  void tell(explore::Example& example, std::optional<model::SignalId> event) const {
    put(example.flips, copy_.signals);
    if (event && !plant_.circuit.signals[*event].is_input()) example.flips.push_back(*event);
    example.flips = lever_flips(plant_.circuit, conditions_, example.flips);
  }

  model::Design const& plant_;
  Copy const& copy_;
  Conditions& conditions_;
  Frame frame_;
};

// A pool of one water is seen from all that know it.
void tell_regions(model::Design const& plant, model::Design const& part, Copy const& copy,
                  Conditions& conditions, RegionWalk& walk) {
  std::set<std::vector<model::Cell>> pools;
  for (auto& region : walk.regions) {
    auto here = copy;
    here.signals.clear();
    for (auto signal : region.signals) here.signals.push_back(copy.signals[signal]);
    std::erase_if(region.judged.findings, [&](auto const& finding) {
      return finding.kind == FindingKind::swimmer_pool && !pools.insert(finding.cells).second;
    });
    Telling(plant, part, here, conditions).tell(region.judged);
  }
}

}  // namespace

void tell_in_plant(model::Design const& plant, WorksJudgement& judged) {
  auto const is_shared = inlets_in_several(judged.islands, plant.inlets.size());
  for (std::uint32_t part = 0; part < judged.parts.size(); ++part) {
    auto const& design = judged.islands.parts[part].design;
    auto const& copy = first_copy(judged.islands, part);
    std::erase_if(judged.parts[part].findings, [&](findings::Finding const& finding) {
      return finding.kind == FindingKind::tight_inlet &&
             is_shared[copy.inlets[finding.inlets.front()]];
    });
    Telling(plant, design, copy, *judged.conditions).tell(judged.parts[part]);
    if (auto& walk = judged.by_regions[part])
      tell_regions(plant, design, copy, *judged.conditions, *walk);
  }
}

}  // namespace leat::works
