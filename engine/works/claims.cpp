#include "engine/works/claims.hpp"

#include <algorithm>
#include <unordered_map>

#include "engine/works/knowledge.hpp"
#include "engine/works/showing.hpp"

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
      : plant_(plant), judged_(judged), diagram_(judged.conditions->diagram()) {
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
    bool const is_of_nobody = speaks_of_routes(expectation.claim) && judged_.passages.size() == 0;
    if (spoken_of == Diagram::never || is_of_nobody) {
      claim.verdict = conditions.may_be_restless() ? Truthfulness::undecided : Truthfulness::empty;
      return claim;
    }
    if (expectation.claim == Claim::no_findings) {
      judge_none(expectation, spoken_of, claim);
    } else if (expectation.claim == Claim::finds) {
      judge_finds(expectation, spoken_of, claim);
    } else {
      judge_route(expectation, spoken_of, claim);
    }
    conclude(expectation, claim);
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
        return !diagram_.both(judged_.passages[passage].reaching(outlet), !open(passage));
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
        return doubtful(passage);
      default:
        return !of(Prospect::arrival);
    }
  }

  // Where it is not for certain where a body ends. Asked by many claims of one passage.
  Function open(std::size_t passage) {
    auto const [entry, is_new] = open_.try_emplace(passage);
    if (is_new) entry->second = diagram_.either(split(passage), troubled(passage));
    return entry->second;
  }

  // A second outlet takes the doubt away. Where it may be told without being there, it does not.
  Function doubtful(std::size_t passage) {
    auto const doubt =
        diagram_.both(judged_.passages.of(Prospect::arrival, passage), troubled(passage));
    return judged_.may_be_wider ? doubt : diagram_.both(doubt, !split(passage));
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

  void judge_none(model::Expectation const& expectation, Function spoken_of, JudgedClaim& claim) {
    auto const is_meant = [&](model::Severity severity) {
      return !expectation.ceiling || severity > *expectation.ceiling;
    };
    is_unknown_ = is_incomplete(judged_) ||
                  (!are_findings_complete(judged_) && is_meant(model::Severity::note));
    for (auto const* kinds : {&judged_.kinds_left_out, &judged_.kinds_in_doubt})
      for (auto kind : *kinds)
        is_unknown_ = is_unknown_ || is_meant(findings::finding_of(kind).severity);
    for (auto const& piece : pieces_of(judged_)) {
      for (auto const& finding : piece.judged->findings) {
        if (finding.accepted_by || !is_meant(finding.severity)) continue;
        auto const failing = shown_within(spoken_of, piece, finding, {});
        if (failing == Diagram::never) continue;
        claim.part_findings.push_back(&finding);
        claim.failing = diagram_.either(claim.failing, failing);
      }
    }
    for (std::size_t f = 0; f < judged_.findings.size(); ++f) {
      auto const& finding = judged_.findings[f].finding;
      auto const failing = diagram_.both(spoken_of, showing_of(judged_.findings[f]));
      if (finding.accepted_by || !is_meant(finding.severity) || failing == Diagram::never) continue;
      is_unknown_ = is_unknown_ || !judged_.findings[f].is_proved;
      if (!judged_.findings[f].is_proved) continue;
      claim.plant_findings.push_back(f);
      claim.failing = diagram_.either(claim.failing, failing);
    }
    claim.instance = nearest(diagram_, claim.failing, as_built_);
  }

  void judge_finds(model::Expectation const& expectation, Function spoken_of, JudgedClaim& claim) {
    is_unknown_ = !was_looked_for(*expectation.kind, judged_);
    auto found = Diagram::never;
    for (auto const& piece : pieces_of(judged_)) {
      for (auto const& finding : piece.judged->findings) {
        if (finding.kind == *expectation.kind)
          found = diagram_.either(found, shown_within(spoken_of, piece, finding, expectation.cell));
      }
    }
    for (auto const& of_plant : judged_.findings) {
      if (!speaks_of(expectation, of_plant.finding)) continue;
      auto const shows = showing_of(of_plant);
      if (of_plant.is_proved)
        found = diagram_.either(found, shows);
      else
        is_unknown_ = is_unknown_ || diagram_.both(shows, spoken_of) != Diagram::never;
    }
    bool const is_found = diagram_.both(found, spoken_of) != Diagram::never;
    if (is_found) is_unknown_ = false;
    if (!is_found && !is_unknown_) claim.failing = spoken_of;
  }

  static bool speaks_of(model::Expectation const& expectation, findings::Finding const& finding) {
    return finding.kind == *expectation.kind &&
           (!expectation.cell ||
            std::binary_search(finding.cells.begin(), finding.cells.end(), *expectation.cell));
  }

  // When it is proved to show there. Who may be told for nothing to come by joins leaves it open.
  // In which of the combinations that are spoken of it can be switched does not matter where these
  // are all.
  Function shown_within(Function spoken_of, Piece const& piece, findings::Finding const& finding,
                        std::optional<model::Cell> cell) {
    auto const as_told =
        spoken_of == Diagram::always ? eased(judged_, occasion_of(finding)) : occasion_of(finding);
    auto const shown = [&](Occasion const& occasion) {
      return diagram_.both(spoken_of, showing_at(cell, piece, finding, occasion));
    };
    auto const told = shown(as_told);
    if (told == Diagram::never || !judged_.may_be_wider) return told;
    auto by_itself = as_told;
    by_itself.counts_joins = false;
    auto const proved = shown(by_itself);
    is_unknown_ = is_unknown_ || proved == Diagram::never;
    return proved;
  }

  // Of states that are never reached no combination can be named: they are missing in all.
  Function showing_of(PlantFinding const& found) {
    auto const shows = diagram_.both(found.condition, judged_.conditions->reachable());
    return shows == Diagram::never ? Diagram::always : shows;
  }

  // A finding is told of the first copy's cells, which stands as the part is drawn.
  Function showing_at(std::optional<model::Cell> cell, Piece const& piece,
                      findings::Finding const& finding, Occasion const& occasion) {
    if (!cell) return showing(judged_, piece, occasion);
    auto const& grid = plant_.grid;
    auto const& part = judged_.islands.parts[piece.part];
    auto const first = first_copy(judged_.islands, piece.part).corner;
    auto shows = Diagram::never;
    for (auto c : part.copies) {
      auto const& copy = judged_.islands.copies[c];
      bool const is_there =
          std::any_of(finding.cells.begin(), finding.cells.end(), [&](model::Cell found) {
            auto const at = grid.place(found);
            model::Place const own{at.x - first.x, at.y - first.y, at.z - first.z};
            return grid.cell(place_in_plant(copy, part.design.grid, own)) == *cell;
          });
      if (is_there) shows = diagram_.either(shows, showing(judged_, piece, copy, occasion));
    }
    return shows;
  }

  // Routes that may be told wider than they are show what never happens, not what does. What is
  // claimed of findings does not speak of them.
  static bool says_that_something_can_be(Claim claim) {
    return claim == Claim::may_reach || claim == Claim::never_lost;
  }
  static bool speaks_of_routes(Claim claim) {
    return claim != Claim::no_findings && claim != Claim::finds;
  }

  // Traps that may not be told let these hold that do not.
  static bool hangs_on_traps(Claim claim) {
    return claim == Claim::reaches || claim == Claim::never_trapped ||
           claim == Claim::never_doubtful;
  }

  // Where it is not known what can come about, what fails might never do so; where an island is not
  // known, or something never comes to rest, nothing is proved.
  Truthfulness concluded(model::Expectation const& expectation, bool is_violated) const {
    auto const kind = expectation.claim;
    if (diagram_.has_run_out()) return Truthfulness::undecided;
    if (is_violated) {
      bool const is_proved =
          !judged_.may_be_wider || !speaks_of_routes(kind) || says_that_something_can_be(kind);
      return is_proved && judged_.conditions->is_reachable_known() ? Truthfulness::violated
                                                                   : Truthfulness::undecided;
    }
    bool const is_open = is_unknown_ || judged_.conditions->may_be_restless() ||
                         !do_waters_rest(judged_) ||
                         (judged_.may_be_wider && says_that_something_can_be(kind)) ||
                         (judged_.may_miss_traps && hangs_on_traps(kind));
    if (is_open) return Truthfulness::undecided;
    if (kind != Claim::finds && !is_history_known(judged_))
      return Truthfulness::holds_within_bounds;
    bool const wants_no_notes = kind == Claim::no_findings && !expectation.ceiling;
    if (wants_no_notes && !is_switching_known(judged_)) return Truthfulness::holds_within_bounds;
    return Truthfulness::holds;
  }

  // Of what is not proved to fail no example is shown.
  void conclude(model::Expectation const& expectation, JudgedClaim& claim) const {
    claim.verdict = concluded(expectation, claim.failing != Diagram::never);
    if (claim.verdict == Truthfulness::violated) return;
    claim.failing = Diagram::never;
    claim.instance.reset();
    claim.passage.reset();
    claim.part_findings.clear();
    claim.plant_findings.clear();
  }

  model::Design const& plant_;
  WorksJudgement const& judged_;
  Diagram& diagram_;
  Instance as_built_;
  std::unordered_map<std::size_t, Function> open_;  // by passage
  bool is_unknown_ = false;                         // the claim speaks of what could not be solved
};

}  // namespace

std::vector<JudgedClaim> judge_claims(model::Design const& plant, WorksJudgement const& judged) {
  Judge judge(plant, judged);
  std::vector<JudgedClaim> claims;
  for (auto const& expectation : plant.expectations) claims.push_back(judge.judge(expectation));
  return claims;
}

}  // namespace leat::works
