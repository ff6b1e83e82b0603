#include "engine/works/plant_findings.hpp"

#include <algorithm>

#include "engine/logic/restriction.hpp"

namespace leat::works {

using logic::Diagram;
using model::FindingKind;

namespace {

// Outlets at which bodies would have arrived, and none ever does.
void unreached_outlets(model::Design const& plant, WorksJudgement const& judged,
                       std::vector<PlantFinding>& found) {
  auto& diagram = judged.conditions->diagram();
  auto const reachable = judged.conditions->reachable();
  std::vector<bool> is_reached(plant.outlets.size(), false);
  for (auto const& join : plant.joins) is_reached[join.outlet] = true;
  for (auto const& [outlet, condition] : judged.passages.ends_of_all()) {
    bool const can_be = diagram.both(condition, reachable) != Diagram::never;
    is_reached[outlet] = is_reached[outlet] || can_be || diagram.has_run_out();
  }
  for (model::OutletId outlet = 0; outlet < is_reached.size(); ++outlet) {
    if (is_reached[outlet]) continue;
    auto finding = findings::finding_of(FindingKind::unreached_outlet);
    finding.outlets.push_back(outlet);
    found.push_back({std::move(finding), reachable});
  }
}

// The variables that some passage depends on.
//
// Idea: a set of outlets that is reached or not by some variable holds an outlet for which that is
// so. The sets are those whose numbers have a 1 in one digit; where no ways part, an end is told by
// all digits of its number, and nothing else depends on a variable than what is asked here. Where
// ways part, passages are looked at one by one until it is all of the variables.
class TestedVariables {
 public:
  TestedVariables(model::Design const& plant, WorksJudgement const& judged)
      : judged_(judged), number_(plant.outlets.size(), 0) {
    std::vector<bool> is_joined(plant.outlets.size(), false);
    for (auto const& join : plant.joins) is_joined[join.outlet] = true;
    for (model::OutletId outlet = 0; outlet < number_.size(); ++outlet)
      if (!is_joined[outlet]) number_[outlet] = count_++;
  }

  std::vector<bool> find() {
    left_ = judged_.conditions->variables().size();
    is_tested_.assign(left_, false);
    for (auto prospect : {Prospect::arrival, Prospect::trapped, Prospect::spilled, Prospect::unsure,
                          Prospect::barred}) {
      note(of_all(prospect));
    }
    for (std::size_t digit = 1; digit < count_ && left_ > 0; digit *= 2) note_digit(digit);
    if (left_ > 0 && can_part()) note_passages();
    return std::move(is_tested_);
  }

 private:
  std::vector<Function> of_all(Prospect prospect) const {
    std::vector<Function> functions;
    for (std::size_t p = 0; p < judged_.passages.size(); ++p)
      functions.push_back(judged_.passages.of(prospect, p));
    return functions;
  }

  void note(std::vector<Function> const& functions) {
    for (auto level : logic::support(judged_.conditions->diagram(), functions)) {
      left_ -= is_tested_[level] ? 0 : 1;
      is_tested_[level] = true;
    }
  }

  void note_digit(std::size_t digit) {
    std::vector<bool> is_meant;
    for (auto number : number_) is_meant.push_back((number & digit) != 0);
    note(judged_.passages.reaching(is_meant));
  }

  bool can_part() const {
    auto const parting = of_all(Prospect::parting);
    return std::any_of(parting.begin(), parting.end(),
                       [](Function f) { return f != Diagram::never; });
  }

  void note_passages() {
    for (std::size_t p = 0; p < judged_.passages.size() && left_ > 0; ++p) {
      std::vector<Function> functions;
      for (auto const& end : judged_.passages[p].ends) functions.push_back(end.condition);
      note(functions);
    }
  }

  WorksJudgement const& judged_;
  std::vector<std::size_t> number_;  // of each outlet among the plant's own; 0 where it is joined
  std::size_t count_ = 0;            // of these
  std::vector<bool> is_tested_;  // by level
  std::size_t left_ = 0;
};

// Of the signals that switch some cell, those that no passage depends on. An input can also work
// through memory, so what memory follows from is no idle input.
void idle_signals(model::Design const& plant, WorksJudgement const& judged,
                  std::vector<PlantFinding>& found) {
  auto const& conditions = *judged.conditions;
  bool const has_memory =
      std::any_of(conditions.variables().begin(), conditions.variables().end(),
                  [&](auto signal) { return plant.circuit.signals[signal].is_memory(); });
  bool const is_exact = !has_memory && !is_incomplete(judged) && !may_be_wider(judged);
  if (!is_exact || conditions.diagram().has_run_out()) return;
  auto const is_tested = TestedVariables(plant, judged).find();
  if (conditions.diagram().has_run_out()) return;
  std::vector<model::SignalId> idle;
  for (Diagram::Level level = 0; level < is_tested.size(); ++level) {
    if (!is_tested[level]) idle.push_back(conditions.variables()[level]);
  }
  std::sort(idle.begin(), idle.end());
  for (auto signal : idle) {
    auto finding = findings::finding_of(FindingKind::idle_signal);
    finding.signals.push_back(signal);
    found.push_back({std::move(finding), conditions.reachable()});
  }
}

// Acceptances without a place cover what is wrong with the whole, too; those that nothing answers
// to are told.
void accept(model::Design const& plant, WorksJudgement const& judged,
            std::vector<PlantFinding>& found) {
  std::vector<bool> is_answered(plant.acceptances.size(), false);
  for (auto const& piece : pieces_of(judged)) {
    for (auto const& finding : piece.judged->findings) {
      if (finding.accepted_by) is_answered[*finding.accepted_by] = true;
    }
  }
  for (auto& [finding, condition] : found) {
    for (std::size_t a = 0; a < is_answered.size() && !finding.accepted_by; ++a) {
      auto const& acceptance = plant.acceptances[a];
      bool const covers =
          acceptance.kind == finding.kind && !acceptance.cell && !acceptance.condition;
      if (covers) finding.accepted_by = a;
      is_answered[a] = is_answered[a] || covers;
    }
  }
  for (std::size_t a = 0; a < is_answered.size(); ++a) {
    if (is_answered[a] || !are_findings_complete(judged)) continue;
    auto finding = findings::finding_of(FindingKind::stale_acceptance);
    finding.acceptance = a;
    found.push_back({std::move(finding), judged.conditions->reachable()});
  }
}

}  // namespace

std::vector<PlantFinding> plant_findings(model::Design const& plant, WorksJudgement const& judged) {
  std::vector<PlantFinding> found;
  unreached_outlets(plant, judged, found);
  idle_signals(plant, judged, found);
  accept(plant, judged, found);
  return found;
}

}  // namespace leat::works
