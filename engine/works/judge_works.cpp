#include "engine/works/judge_works.hpp"

#include <algorithm>

#include "engine/model/conditions.hpp"
#include "engine/model/joins.hpp"
#include "engine/works/barred_histories.hpp"
#include "engine/works/claims.hpp"
#include "engine/works/in_plant.hpp"
#include "engine/works/mixed_waters.hpp"
#include "engine/works/plant_findings.hpp"
#include "engine/works/showing.hpp"

namespace leat::works {

namespace {

// Signals one after the other, each followed at once by those that it follows from.
class MetSignals {
 public:
  explicit MetSignals(model::Circuit const& circuit)
      : circuit_(circuit),
        is_met_(circuit.signals.size(), false),
        is_read_(circuit.expressions.size(), false) {}

  // Operands from left to right, by a stack of its own: chains can be longer than any call stack.
  void meet(model::SignalId signal) {
    std::vector<model::ExpressionId> open;
    take(signal, open);
    while (!open.empty()) {
      auto const id = open.back();
      open.pop_back();
      if (is_read_[id]) continue;
      is_read_[id] = true;
      auto const& [op, left, right] = circuit_.expressions[id];
      if (op > model::Operator::negation) open.push_back(right);
      if (op >= model::Operator::negation) open.push_back(left);
      if (op == model::Operator::signal) take(left, open);
    }
  }
  std::vector<model::SignalId> const& signals() const { return signals_; }

 private:
  void take(model::SignalId signal, std::vector<model::ExpressionId>& open) {
    if (is_met_[signal]) return;
    is_met_[signal] = true;
    signals_.push_back(signal);
    auto const& met = circuit_.signals[signal];
    if (met.kind == model::SignalKind::wire) open.push_back(met.definition);
  }

  model::Circuit const& circuit_;
  std::vector<bool> is_met_, is_read_;
  std::vector<model::SignalId> signals_;
};

// Signals in the order in which a body that enters meets what they switch: conditions of one way
// then stand together in the diagram.
std::vector<model::SignalId> signals_on_the_way(model::Design const& plant,
                                                Islands const& islands) {
  std::vector<std::vector<std::uint32_t>> copies_of(plant.inlets.size());
  for (std::uint32_t c = 0; c < islands.copies.size(); ++c) {
    for (auto inlet : islands.copies[c].inlets) copies_of[inlet].push_back(c);
  }
  model::Joins const joins(plant);
  std::vector<bool> is_met;
  std::vector<model::InletId> met;
  for (model::InletId inlet = 0; inlet < plant.inlets.size(); ++inlet) {
    is_met.push_back(joins.is_entrance(inlet));
    if (is_met.back()) met.push_back(inlet);
  }
  MetSignals signals(plant.circuit);
  for (std::size_t i = 0; i < met.size(); ++i) {
    for (auto c : copies_of[met[i]]) {
      auto const& copy = islands.copies[c];
      for (auto signal : copy.signals) signals.meet(signal);
      for (auto outlet : copy.outlets) {
        auto const& join = joins.from(outlet);
        if (!join || is_met[join->inlet]) continue;
        is_met[join->inlet] = true;
        met.push_back(join->inlet);
      }
    }
  }
  return signals.signals();
}

// Each part as a whole where it is small enough, else by regions.
void judge_parts(PlantBudget const& budget, Progress const& progress, WorksJudgement& judged) {
  auto const count = judged.islands.parts.size();
  for (std::uint32_t part = 0; part < count; ++part) {
    auto const design = judged.islands.parts[part].drawn();
    auto const tell = [&](std::size_t, std::size_t) {
      if (progress) progress(part, count);
    };
    judged.parts.push_back(judge(design, budget.part, tell));
    for (auto& water : judged.parts.back().histories.waters) water.field = {};
    judged.own_variables.push_back(judged.parts.back().variables);
    judged.by_regions.emplace_back();
    if (judged.parts.back().is_decided) continue;
    auto& walk = judged.by_regions.back() = walk_regions(design, budget.region, tell);
    if (!walk) {
      judged.too_large.push_back(part);
      continue;
    }
    for (std::uint32_t r = 0; r < walk->regions.size(); ++r) {
      auto const& region = walk->regions[r];
      if (region.is_met && !region.is_solved) judged.too_large_regions.emplace_back(part, r);
    }
  }
}

// What islands find by themselves can be promised away in the plant, or happen to bodies that never
// come there.
void leave_out_what_never_shows(model::Design const& plant, WorksJudgement& judged) {
  if (judged.conditions->reachable() == logic::Diagram::always && plant.joins.empty()) return;
  for (auto const& piece : pieces_of(judged)) {
    auto& own = piece.region ? judged.by_regions[piece.part]->regions[*piece.region].judged
                             : judged.parts[piece.part];
    auto const never_shows = [&](Occasion const& occasion) {
      return !occasion.rows.is_empty() && !can_show(judged, piece, occasion);
    };
    std::erase_if(own.findings, [&](findings::Finding const& finding) {
      return never_shows(occasion_of(finding));
    });
    std::erase_if(own.guards, [&](explore::Guard const& guard) {
      return never_shows({guard.rows, guard.event, {}, {}});
    });
    for (auto& guard : own.guards) {
      std::erase_if(guard.threats, [&](explore::Threat const& threat) {
        return never_shows({threat.rows, guard.event, {}, {}});
      });
    }
  }
}

}  // namespace

std::vector<Piece> pieces_of(WorksJudgement const& judged) {
  std::vector<Piece> pieces;
  for (std::uint32_t part = 0; part < judged.parts.size(); ++part) {
    pieces.push_back({&judged.parts[part], part});
    if (!judged.by_regions[part]) continue;
    auto const& regions = judged.by_regions[part]->regions;
    for (std::uint32_t r = 0; r < regions.size(); ++r) {
      pieces.push_back({&regions[r].judged, part, r});
    }
  }
  return pieces;
}

bool are_findings_complete(WorksJudgement const& judged) {
  return judged.too_large.empty() &&
         std::none_of(judged.by_regions.begin(), judged.by_regions.end(),
                      [](auto const& walk) { return walk.has_value(); });
}

WorksJudgement judge_works(model::Design const& plant, PlantBudget const& budget,
                           Progress const& progress) {
  WorksJudgement judged;
  judged.islands = islands_of(plant);
  judge_parts(budget, progress, judged);
  judged.conditions =
      std::make_unique<Conditions>(plant.circuit, model::conditions_of(plant),
                                   signals_on_the_way(plant, judged.islands), budget.most_nodes);
  auto const mixed = mixed_waters(plant, judged);
  judged.may_be_wider = mixed.may_mix;
  judged.may_miss_traps = mixed.may_return;
  judged.passages =
      Passages(Network(plant, judged.islands, judged.parts, judged.by_regions, *judged.conditions),
               *judged.conditions);
  tell_in_plant(plant, judged);
  judged.arrivals = Arrivals(plant);
  leave_out_what_never_shows(plant, judged);
  leave_out_barred_histories(plant, judged);
  find_in_plant(plant, judged);
  judged.expectations = judge_claims(plant, judged);
  judged.has_run_out = judged.conditions->diagram().has_run_out();
  return judged;
}

}  // namespace leat::works
