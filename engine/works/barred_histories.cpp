#include "engine/works/barred_histories.hpp"

#include <algorithm>

#include "engine/as_built.hpp"
#include "engine/logic/evaluation.hpp"
#include "engine/logic/restriction.hpp"
#include "engine/logic/settled_circuit.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

using Levels = std::vector<Diagram::Level>;

bool is_remembering(Judgement const& judged) {
  auto const& waters = judged.histories.waters;
  return !explore::do_rest(judged.histories) ||
         std::any_of(waters.begin(), waters.end(),
                     [](auto const& water) { return !water.is_fresh; });
}

// The promises that have to do with some signals: those that speak of them, or of what any of these
// speaks of; and whatever leaves nothing to any signal.
struct Ties {
  std::size_t promises = 0;
  Levels levels;  // of all these signals
};

class Promises {
 public:
  Promises(model::Design const& plant, Conditions& conditions) {
    for (auto never : plant.circuit.nevers) {
      levels_.push_back(logic::support(conditions.diagram(), {conditions.of(never)}));
      bars_all_ = bars_all_ || conditions.of(never) == Diagram::always;
    }
  }

  bool bar_all() const { return bars_all_; }

  Ties about(Levels levels) const {
    Ties ties{0, std::move(levels)};
    std::vector<bool> is_tied(levels_.size(), false);
    for (bool is_new = true; is_new;) {
      is_new = false;
      for (std::size_t i = 0; i < levels_.size(); ++i) {
        if (is_tied[i] || !have_common(levels_[i], ties.levels)) continue;
        is_tied[i] = is_new = true;
        ++ties.promises;
        Levels all;
        std::set_union(levels_[i].begin(), levels_[i].end(), ties.levels.begin(), ties.levels.end(),
                       std::back_inserter(all));
        ties.levels = std::move(all);
      }
    }
    return ties;
  }

 private:
  static bool have_common(Levels const& a, Levels const& b) {
    return std::any_of(a.begin(), a.end(),
                       [&](auto level) { return std::binary_search(b.begin(), b.end(), level); });
  }
  std::vector<Levels> levels_;  // by promise
  bool bars_all_ = false;
};

// The signals of one copy among the levers of its plant, which has no memory: a history of the
// plant flips one lever after the other.
class Flips {
 public:
  Flips(Part const& part, Copy const& copy, Levels levels, Conditions& conditions)
      : conditions_(conditions),
        diagram_(conditions.diagram()),
        levels_(std::move(levels)),
        own_(support(part)),
        circuit_(logic::settled_circuit(part.design.circuit)) {
    for (auto signal : own_) of_own_.push_back(conditions.of_signal(copy.signals[signal]));
    for (auto level : levels_)
      can_flip_.push_back(conditions.flippable(conditions.variables()[level]));
  }

  // Whether each signal can be flipped alone wherever the part's own promises let it.
  bool are_free() {
    for (std::size_t i = 0; i < own_.size(); ++i) {
      auto const asked = diagram_.both(conditions_.reachable(), allowed(i));
      if (diagram_.both(asked, !free(i, asked)) != Diagram::never) return false;
    }
    return !diagram_.has_run_out();
  }

 private:
  Function flipped(Function f, Diagram::Level level) {
    return diagram_.choice(diagram_.variable(level), logic::cofactor(diagram_, f, level, false),
                           logic::cofactor(diagram_, f, level, true));
  }

  // Where a lever's flip changes just this one of the own signals; or none of them.
  Function changing(std::size_t lever, std::optional<std::size_t> only) {
    auto where = can_flip_[lever];
    for (std::size_t i = 0; i < of_own_.size() && where != Diagram::never; ++i) {
      auto const changes = diagram_.differ(of_own_[i], flipped(of_own_[i], levels_[lever]));
      where = diagram_.both(where, i == only ? changes : !changes);
    }
    return where;
  }

  // What the part's own promises say of the combination in which this signal is flipped.
  Function allowed(std::size_t own) {
    std::vector<Function> of_signal(circuit_.signals.size(), Diagram::never);
    for (std::size_t i = 0; i < own_.size(); ++i)
      of_signal[own_[i]] = i == own ? !of_own_[i] : of_own_[i];
    logic::Evaluation evaluation(circuit_, diagram_, of_signal);
    auto allowed = Diagram::always;
    for (auto never : circuit_.nevers) allowed = diagram_.both(allowed, !evaluation.of(never));
    return allowed;
  }

  // Where this signal can be flipped alone, perhaps after flips that the part does not notice;
  // until `asked` is covered.
  Function free(std::size_t own, Function asked) {
    auto free = Diagram::never;
    for (std::size_t lever = 0; lever < levels_.size(); ++lever)
      free = diagram_.either(free, changing(lever, own));
    for (bool is_new = true; is_new && !diagram_.has_run_out();) {
      if (diagram_.both(asked, !free) == Diagram::never) break;
      auto const before = free;
      for (std::size_t lever = 0; lever < levels_.size(); ++lever) {
        auto const on_the_way =
            diagram_.both(changing(lever, std::nullopt), flipped(free, levels_[lever]));
        free = diagram_.either(free, on_the_way);
      }
      is_new = free != before;
    }
    return free;
  }

  Conditions& conditions_;
  Diagram& diagram_;
  Levels levels_;
  std::vector<model::SignalId> own_;  // inputs of the part
  model::Circuit circuit_;            // of the part
  std::vector<Function> of_own_;
  std::vector<Function> can_flip_;  // by lever: from where to where both can come about
};

// Whether what the plant promises has to do with a region where its own promises do not say it.
bool may_be_barred(model::Design const& plant, Copy const& copy, SolvedRegion const& region,
                   Conditions& conditions) {
  auto const own = inputs_of(copy, region.own_variables, conditions);
  Promises const promises(plant, conditions);
  return promises.bar_all() ||
         promises.about(logic::support(conditions.diagram(), own)).promises != region.promises;
}

bool may_be_barred(model::Design const& plant, Islands const& islands, Copy const& copy,
                   Conditions& conditions) {
  auto const& part = islands.parts[copy.part];
  auto const own = inputs_of(copy, support(part), conditions);
  Promises const promises(plant, conditions);
  auto ties = promises.about(logic::support(conditions.diagram(), own));
  bool const are_own = ties.promises == part.design.circuit.nevers.size();
  if (are_own && !promises.bar_all()) return false;
  return conditions.has_memory() ||
         !Flips(part, copy, std::move(ties.levels), conditions).are_free();
}

// Whether the plant cannot return to as built, since that is promised away: then its water there is
// the fresh one, though a part may know another for the same of its own signals.
bool is_built_barred(model::Design const& plant, Conditions const& conditions) {
  auto const built = as_built(plant);
  std::vector<bool> values;
  for (auto variable : conditions.variables()) values.push_back(built[variable]);
  auto const& nevers = plant.circuit.nevers;
  return std::any_of(nevers.begin(), nevers.end(), [&](model::ExpressionId never) {
    return conditions.diagram().is_true(conditions.of(never), values);
  });
}

void leave_out(std::vector<findings::Finding>& findings, std::vector<FindingKind>& kinds) {
  std::erase_if(findings, [&](findings::Finding const& finding) {
    if (finding.kind == FindingKind::unreached_outlet) return false;
    kinds.push_back(finding.kind);
    return true;
  });
}

}  // namespace

void leave_out_barred_histories(model::Design const& plant, WorksJudgement& judged) {
  if (plant.circuit.nevers.empty()) return;
  std::vector<bool> is_barred(judged.parts.size(), false);
  bool const is_for_good = is_built_barred(plant, *judged.conditions);
  for (auto const& copy : judged.islands.copies) {
    if (is_barred[copy.part]) continue;
    if (auto const& walk = judged.by_regions[copy.part]) {
      is_barred[copy.part] =
          std::any_of(walk->regions.begin(), walk->regions.end(), [&](SolvedRegion const& region) {
            return is_remembering(region.judged) &&
                   (is_for_good || may_be_barred(plant, copy, region, *judged.conditions));
          });
    } else if (is_remembering(judged.parts[copy.part])) {
      is_barred[copy.part] =
          is_for_good || may_be_barred(plant, judged.islands, copy, *judged.conditions);
    }
  }
  for (std::uint32_t part = 0; part < is_barred.size(); ++part) {
    if (!is_barred[part]) continue;
    leave_out(judged.parts[part].findings, judged.kinds_in_doubt);
    auto& walk = judged.by_regions[part];
    if (!walk) continue;
    leave_out(walk->sights.findings, judged.kinds_in_doubt);
    for (auto& region : walk->regions) leave_out(region.judged.findings, judged.kinds_in_doubt);
  }
}

}  // namespace leat::works
