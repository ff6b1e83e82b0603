#include "engine/works/claims.hpp"

#include <algorithm>
#include <unordered_map>

namespace leat::works {

using logic::Diagram;
using model::Claim;
using verdicts::Truthfulness;

Function splitting(Passage const& passage, Diagram& diagram) {
  auto one = Diagram::never, several = Diagram::never;
  if (passage.parting == Diagram::never) return several;
  for (auto const& end : passage.ends) {
    several = diagram.either(several, diagram.both(one, end.condition));
    one = diagram.either(one, end.condition);
  }
  return several;
}

Function troubled(Passage const& passage, Diagram& diagram) {
  return diagram.either(diagram.either(passage.trapped, passage.spilled),
                        diagram.either(passage.unsure, passage.barred));
}

Function certain(Passage const& passage, model::OutletId outlet, Diagram& diagram) {
  auto alone = passage.reaching(outlet);
  for (auto const& end : passage.ends) {
    if (end.outlet != outlet) alone = diagram.both(alone, !end.condition);
  }
  return diagram.both(alone, !troubled(passage, diagram));
}

Fate fate(Passage const& passage, Diagram const& diagram, Instance const& instance) {
  auto const is = [&](Function f) { return diagram.is_true(f, instance); };
  Fate fate{body::Verdict::lost, {}, is(passage.trapped), is(passage.spilled), is(passage.unsure),
            is(passage.barred)};
  for (auto const& end : passage.ends) {
    if (is(end.condition)) fate.outlets.push_back(end.outlet);
  }
  bool const has_trouble = fate.is_trapped || fate.spills || fate.is_unsure || fate.is_barred;
  if (fate.outlets.size() > 1)
    fate.verdict = body::Verdict::split;
  else if (!fate.outlets.empty())
    fate.verdict = has_trouble ? body::Verdict::doubtful : body::Verdict::certain;
  return fate;
}

std::optional<Instance> nearest(Diagram const& diagram, Function where, Instance const& as_built) {
  if (where == Diagram::never) return std::nullopt;
  constexpr std::uint32_t unreachable = 0xffffffffu;
  std::unordered_map<std::uint32_t, std::uint32_t> changes{{Diagram::always.edge, 0},
                                                           {Diagram::never.edge, unreachable}};
  auto const step = [&](Function f, Diagram::Level level, bool value) {
    auto const known = changes.at(f.edge);
    return known == unreachable ? known : known + (value != as_built[level] ? 1u : 0u);
  };
  std::vector<Function> open{where};
  while (!open.empty()) {
    auto const f = open.back();
    if (changes.count(f.edge) != 0) {
      open.pop_back();
      continue;
    }
    auto const level = diagram.level(f);
    auto const [off, on] = diagram.branches(f, level);
    bool const is_off_known = changes.count(off.edge) != 0,
               is_on_known = changes.count(on.edge) != 0;
    if (!is_off_known) open.push_back(off);
    if (!is_on_known) open.push_back(on);
    if (is_off_known && is_on_known)
      changes.emplace(f.edge, std::min(step(off, level, false), step(on, level, true)));
  }
  auto instance = as_built;
  for (auto f = where; diagram.level(f) != Diagram::below_all;) {
    auto const level = diagram.level(f);
    auto const [off, on] = diagram.branches(f, level);
    auto const if_off = step(off, level, false), if_on = step(on, level, true);
    bool const stays = as_built[level] ? if_on <= if_off : if_on < if_off;
    instance[level] = stays;
    f = stays ? on : off;
  }
  return instance;
}

namespace {

class Judge {
 public:
  Judge(model::Design const& plant, WorksJudgement const& judged)
      : judged_(judged), diagram_(judged.conditions->diagram()) {
    for (auto variable : judged.conditions->variables())
      as_built_.push_back(plant.circuit.signals[variable].starts_on);
  }

  JudgedClaim judge(model::Expectation const& expectation) {
    JudgedClaim claim;
    bool const is_beyond = !expectation.events.empty() || expectation.claim == Claim::deals ||
                           expectation.claim == Claim::clears || diagram_.has_run_out();
    if (is_beyond) return claim;
    is_unknown_ = false;
    auto const& conditions = *judged_.conditions;
    auto spoken_of = conditions.reachable();
    if (expectation.condition)
      spoken_of = diagram_.both(spoken_of, conditions.of(*expectation.condition));
    if (spoken_of == Diagram::never) {
      claim.verdict = Truthfulness::empty;
      return claim;
    }
    if (expectation.claim == Claim::no_findings) {
      judge_none(expectation, spoken_of, claim);
    } else if (expectation.claim == Claim::finds) {
      judge_finds(expectation, spoken_of, claim);
    } else {
      judge_route(expectation, spoken_of, claim);
    }
    conclude(expectation.claim, claim);
    return claim;
  }

 private:
  // When it breaks the claim, for what enters by one passage. The passage itself is asked for only
  // where no prospect tells.
  Function breaking(model::Expectation const& expectation, std::size_t passage) {
    auto const of = [&](Prospect prospect) { return judged_.passages.of(prospect, passage); };
    auto const outlet = expectation.outlet.value_or(0);
    switch (expectation.claim) {
      case Claim::reaches:
        return !certain(judged_.passages[passage], outlet, diagram_);
      case Claim::may_reach:
        return !judged_.passages[passage].reaching(outlet);
      case Claim::never_reaches:
        return judged_.passages[passage].reaching(outlet);
      case Claim::reaches_nothing:
        return of(Prospect::arrival);
      case Claim::never_trapped:
        return of(Prospect::trapped);
      case Claim::never_spilled:
        return of(Prospect::spilled);
      case Claim::never_split:
        return split(passage);
      case Claim::never_doubtful:
        return diagram_.both(diagram_.both(of(Prospect::arrival), !split(passage)),
                             troubled(passage));
      default:
        return !of(Prospect::arrival);
    }
  }

  Function split(std::size_t passage) {
    bool const can_part = judged_.passages.of(Prospect::parting, passage) != Diagram::never;
    return can_part ? splitting(judged_.passages[passage], diagram_) : Diagram::never;
  }

  Function troubled(std::size_t passage) {
    auto trouble = Diagram::never;
    for (auto prospect : {Prospect::trapped, Prospect::spilled, Prospect::unsure, Prospect::barred})
      trouble = diagram_.either(trouble, judged_.passages.of(prospect, passage));
    return trouble;
  }

  void judge_route(model::Expectation const& expectation, Function spoken_of, JudgedClaim& claim) {
    for (std::size_t p = 0; p < judged_.passages.size(); ++p) {
      if (expectation.inlet && *expectation.inlet != judged_.passages.inlet(p)) continue;
      if (expectation.profile && *expectation.profile != judged_.passages.profile(p)) continue;
      auto const unknown = judged_.passages.of(Prospect::unknown, p);
      if (diagram_.both(spoken_of, unknown) != Diagram::never) is_unknown_ = true;
      auto const failing =
          diagram_.both(diagram_.both(spoken_of, !unknown), breaking(expectation, p));
      if (failing == Diagram::never) continue;
      if (!claim.passage) {
        claim.passage = p;
        claim.instance = nearest(diagram_, failing, as_built_);
      }
      claim.failing = diagram_.either(claim.failing, failing);
    }
  }

  // When a finding shows, in any of the places of its part.
  Function showing(Piece const& piece, findings::Finding const& finding) {
    auto shows = Diagram::never;
    for (auto const& copy : judged_.islands.copies) {
      if (copy.part != piece.part) continue;
      shows = diagram_.either(
          shows, piece.region ? showing_in_region(piece, copy, finding)
                              : judged_.conditions->of(
                                    finding.rows, inputs_of(copy, judged_.own_variables[piece.part],
                                                            *judged_.conditions)));
    }
    return shows;
  }

  // In its rows, while all that the region does not depend on stands as built.
  Function showing_in_region(Piece const& piece, Copy const& copy,
                             findings::Finding const& finding) {
    auto const& region = judged_.by_regions[piece.part]->regions[*piece.region];
    auto shows = judged_.conditions->of(finding.rows,
                                        inputs_of(copy, region.own_variables, *judged_.conditions));
    auto const& design = judged_.islands.parts[piece.part].design;
    for (auto signal : support(judged_.islands.parts[piece.part])) {
      auto const& own = region.own_variables;
      if (std::find(own.begin(), own.end(), signal) != own.end()) continue;
      auto const value = judged_.conditions->of_signal(copy.signals[signal]);
      shows = diagram_.both(shows, design.circuit.signals[signal].starts_on ? value : !value);
    }
    return shows;
  }

  void judge_none(model::Expectation const& expectation, Function spoken_of, JudgedClaim& claim) {
    is_unknown_ = !are_findings_complete(judged_);
    auto const is_meant = [&](model::Severity severity) {
      return !expectation.ceiling || severity > *expectation.ceiling;
    };
    for (auto const& piece : pieces_of(judged_)) {
      for (auto const& finding : piece.judged->findings) {
        if (finding.accepted_by || !is_meant(finding.severity)) continue;
        auto const failing = diagram_.both(spoken_of, showing(piece, finding));
        if (failing == Diagram::never) continue;
        claim.part_findings.push_back(&finding);
        claim.failing = diagram_.either(claim.failing, failing);
      }
    }
    for (std::size_t f = 0; f < judged_.findings.size(); ++f) {
      auto const& [finding, condition] = judged_.findings[f];
      auto const failing = diagram_.both(spoken_of, condition);
      if (finding.accepted_by || !is_meant(finding.severity) || failing == Diagram::never) continue;
      claim.plant_findings.push_back(f);
      claim.failing = diagram_.either(claim.failing, failing);
    }
    claim.instance = nearest(diagram_, claim.failing, as_built_);
  }

  void judge_finds(model::Expectation const& expectation, Function spoken_of, JudgedClaim& claim) {
    is_unknown_ = !are_findings_complete(judged_);
    auto found = Diagram::never;
    for (auto const& piece : pieces_of(judged_)) {
      for (auto const& finding : piece.judged->findings) {
        bool const is_there =
            !expectation.cell ||
            std::binary_search(finding.cells.begin(), finding.cells.end(), *expectation.cell);
        if (finding.kind == *expectation.kind && is_there)
          found = diagram_.either(found, showing(piece, finding));
      }
    }
    for (auto const& [finding, condition] : judged_.findings) {
      if (finding.kind == *expectation.kind && !expectation.cell)
        found = diagram_.either(found, condition);
    }
    bool const is_found = diagram_.both(found, spoken_of) != Diagram::never;
    if (is_found) is_unknown_ = false;
    if (!is_found && !is_unknown_) claim.failing = spoken_of;
  }

  // Routes that may be told wider than they are show what never happens, not what does.
  static bool says_that_something_can_be(Claim claim) {
    return claim == Claim::may_reach || claim == Claim::never_lost;
  }

  // Where it is not known what can come about, what fails might never do so; where an island is not
  // known, or some event never comes to rest, nothing is proved.
  void conclude(Claim kind, JudgedClaim& claim) {
    bool const is_violated = claim.failing != Diagram::never;
    if (diagram_.has_run_out()) return;
    bool const is_wider = judged_.may_be_wider;
    if (is_violated && judged_.conditions->is_reachable_known() && !is_wider)
      claim.verdict = Truthfulness::violated;
    if (is_wider && says_that_something_can_be(kind)) return;
    if (!is_violated && !is_unknown_ && !judged_.conditions->has_restless())
      claim.verdict = Truthfulness::holds;
  }

  WorksJudgement const& judged_;
  Diagram& diagram_;
  Instance as_built_;
  bool is_unknown_ = false;  // the claim speaks of what could not be solved
};

}  // namespace

std::vector<JudgedClaim> judge_claims(model::Design const& plant, WorksJudgement const& judged) {
  Judge judge(plant, judged);
  std::vector<JudgedClaim> claims;
  for (auto const& expectation : plant.expectations) claims.push_back(judge.judge(expectation));
  return claims;
}

}  // namespace leat::works
