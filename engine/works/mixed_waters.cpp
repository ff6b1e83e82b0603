#include "engine/works/mixed_waters.hpp"

#include <algorithm>
#include <set>

#include "engine/logic/restriction.hpp"

namespace leat::works {

namespace {

// How many of a part's pieces have unlike waters, by routes, in one combination.
std::size_t remembering(WorksJudgement const& judged, std::uint32_t part) {
  if (auto const& walk = judged.by_regions[part]) return walk->remembering();
  auto const& findings = judged.parts[part].findings;
  return std::any_of(findings.begin(), findings.end(), [](findings::Finding const& finding) {
    return finding.kind == model::FindingKind::remembering_water &&
           finding.severity >= model::Severity::warning;
  });
}

// Whether joins lead from a copy, through whatever copies, back into it.
class Returns {
 public:
  Returns(model::Design const& plant, Islands const& islands)
      : islands_(islands), next_(plant.outlets.size()), copies_into_(plant.inlets.size()) {
    for (auto const& join : plant.joins) next_[join.outlet] = join.inlet;
    for (std::uint32_t c = 0; c < islands.copies.size(); ++c) {
      for (auto inlet : islands.copies[c].inlets) copies_into_[inlet].push_back(c);
    }
  }

  bool leads_back(std::uint32_t copy) const {
    std::vector<bool> is_met(islands_.copies.size(), false);
    std::vector<std::uint32_t> open{copy};
    while (!open.empty()) {
      auto const from = open.back();
      open.pop_back();
      for (auto outlet : islands_.copies[from].outlets) {
        if (!next_[outlet]) continue;
        for (auto into : copies_into_[*next_[outlet]]) {
          if (!is_met[into]) open.push_back(into);
          is_met[into] = true;
        }
      }
    }
    return is_met[copy];
  }

 private:
  Islands const& islands_;
  std::vector<std::optional<model::InletId>> next_;      // by outlet
  std::vector<std::vector<std::uint32_t>> copies_into_;  // by inlet
};

}  // namespace

namespace {

// Memory of the plant that does not stand in the part's own rows.
bool has_other_memory(model::Design const& plant, WorksJudgement const& judged, Copy const& copy) {
  std::set<model::SignalId> own;
  for (auto signal : support(judged.islands.parts[copy.part])) own.insert(copy.signals[signal]);
  auto const& variables = judged.conditions->variables();
  return std::any_of(variables.begin(), variables.end(), [&](model::SignalId variable) {
    return plant.circuit.signals[variable].is_memory() && own.count(variable) == 0;
  });
}

}  // namespace

MixedWaters mixed_waters(model::Design const& plant, WorksJudgement const& judged) {
  auto const& islands = judged.islands;
  Returns const returns(plant, islands);
  std::vector<std::size_t> count;
  for (std::uint32_t part = 0; part < islands.parts.size(); ++part)
    count.push_back(remembering(judged, part));
  auto& conditions = *judged.conditions;
  std::set<logic::Diagram::Level> followed;
  MixedWaters mixed;
  for (std::uint32_t c = 0; c < islands.copies.size(); ++c) {
    auto const& copy = islands.copies[c];
    if (count[copy.part] == 0) continue;
    mixed.may_return = mixed.may_return || returns.leads_back(c);
    mixed.may_mix = mixed.may_mix || mixed.may_return || count[copy.part] > 1 ||
                    !plant.circuit.nevers.empty() || has_other_memory(plant, judged, copy);
    auto const inputs = inputs_of(copy, support(islands.parts[copy.part]), conditions);
    for (auto level : logic::support(conditions.diagram(), inputs))
      mixed.may_mix = !followed.insert(level).second || mixed.may_mix;
  }
  return mixed;
}

}  // namespace leat::works
